// The cases of the list that are made together with the case at hand: bought, ordered and
// priced as one, and timed for one bench.
import { cases } from './cases.js';
import { make } from './dom.js';
import { atHand, keep, kept } from './kept.js';

const ticked = () => new Set([kept('together', [])].flat());
const hearers = [];
let seen = '';

// onTogether calls back when others are made together, or one of them has changed.
export const onTogether = (back) => hearers.push(back);

// others are those cases, but for the one at hand.
const others = () => cases().there.filter((c) => c.id !== atHand() && ticked().has(c.id));

// besides are they for a request, and named for a sentence.
export const besides = () => others().map((c) => ({ name: c.title, text: c.text }));

// look tells those who hear of it where there is something new.
export function look() {
  const now = JSON.stringify(others().map((c) => [c.id, c.mark]));
  if (now === seen) return;
  seen = now;
  for (const back of hearers) back();
}

export function apart() {
  keep('together', []);
  look();
}

// tick returns the box that counts a case in.
export function tick(c) {
  const box = make('input', { type: 'checkbox', 'data-of': 'together ' + c.id, change: () => {
    const all = ticked();
    if (box.checked) all.add(c.id);
    else all.delete(c.id);
    keep('together', [...all]);
    look();
  } });
  box.checked = ticked().has(c.id);
  return make('label', {}, box, ' together with the case at hand', make('span', { class: 'unseen' }, `: ${c.title || 'no name yet'}`));
}
