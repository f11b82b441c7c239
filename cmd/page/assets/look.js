// The look: the typeface of the prints, and light or dark as a maker likes it.
import { ask } from './core.js';
import { $, make } from './dom.js';
import { keep, kept } from './kept.js';

const root = document.documentElement;
const looks = { '': 'as this machine', light: 'light', dark: 'dark' };

const select = make('select', { id: 'look', 'aria-label': 'look: light or dark', change: () => wear(select.value) },
  ...Object.entries(looks).map(([value, words]) => make('option', { value }, words)));
$('ways').append(make('label', { class: 'way' }, 'look ', select));

function wear(look) {
  if (!(look in looks)) look = '';
  select.value = look;
  if (look) root.dataset.look = look;
  else delete root.dataset.look;
  keep('look', look);
}

wear(kept('look', ''));

// The typeface comes out of the program, in which the prints have it.
export const face = ask({ do: 'typeface' }).then(async ({ files = [] }) => {
  for (const { name, data } of files) {
    const font = new FontFace('Go', data, { weight: name.includes('Bold') ? 'bold' : 'normal' });
    document.fonts.add(await font.load());
  }
});

// On paper stands all that was typed, folded away or not, and what to take care of.
let unfolded = [];
const care = make('p', { class: 'care on-paper' });
$('fit').after(care);
addEventListener('beforeprint', () => {
  care.textContent = document.querySelector('#sheets .care')?.textContent ?? '';
  unfolded = [...document.querySelectorAll('details.fold:not([open])')].filter((fold) => fold.querySelector('[data-set]'));
  for (const fold of unfolded) fold.open = true;
});
addEventListener('afterprint', () => {
  for (const fold of unfolded) fold.open = false;
});
