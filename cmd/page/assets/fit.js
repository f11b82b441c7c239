// Section 4: whether the book will fit, the tightest place, and what to do about it.
import { Newest } from './core.js';
import { $, button, make } from './dom.js';
import { draw } from './drawing.js';
import { mend, visit } from './fields.js';
import * as job from './job.js';

const place = $('fit');
const pictures = new Newest();
const odds = make('p', { id: 'odds' });
const amiss = make('div', { id: 'amiss' });
const finished = make('figure', { id: 'case' });
const tightest = make('figure', { id: 'tightest' });
const more = make('div', { id: 'more' });
const mends = make('div', { id: 'mends' });
const numbers = make('dl', { id: 'numbers' });
place.append(odds, amiss, make('div', { class: 'pictures' }, finished, tightest), more, mends, numbers);

let of = ''; // the job file that the pictures are of

// drawn returns it: what can't be made keeps the pictures of what could.
export const drawn = () => of;

// onDrawn calls back with the picture of each case that is drawn, SVG.
export const onDrawn = (back) => lookers.push(back);
const lookers = [];

job.hear(({ answer, faults = [], error }) => {
  if (!answer) return;
  const made = !['refused', 'empty'].includes(answer.verdict);
  for (const line of [$('verdict'), $('line')]) {
    line.textContent = answer.says;
    line.dataset.verdict = answer.verdict;
  }
  odds.textContent = answer.chances ?? '';
  tellAmiss([...faults.filter((f) => !f.empty), ...(answer.warnings ?? [])], error, answer);
  place.classList.toggle('stale', !made);
  if (!made) {
    of = job.text();
    return;
  }
  more.replaceChildren(...(answer.more ?? []).map((line) => make('p', {}, line)));
  mends.replaceChildren(...listOf('What would mend it, the least effort first', answer.mends ?? []));
  numbers.replaceChildren(...(answer.numbers ?? []).flatMap((n) => [make('dt', {}, n.name), make('dd', {}, n.text)]));
  drawCase(answer.tightest);
});

async function drawCase(gap) {
  const text = job.text();
  const response = await pictures.ask({ do: 'pictures', text });
  if (!response) return;
  if (response.pictures) {
    finished.replaceChildren(draw(response.pictures.case));
    tightest.replaceChildren(draw(response.pictures.tightest), ...captionOf(gap));
  }
  of = text;
  performance.mark('drawn');
  if (response.pictures) for (const back of lookers) back(response.pictures.case);
}

// captionOf says what the numbers of a picture stand for.
function captionOf({ name, chain, drawn }) {
  const items = chain.map((l) => make('li', { class: l.gives ? 'gives' : '' }, `${l.name} ${l.text}` + (l.times === '2' ? ', twice' : l.times ? `, ${l.times} times` : '') + (l.gives ? ' (gives the room)' : '')));
  return [make('figcaption', {}, make('b', {}, `The tightest place, the ${name}: ${drawn} is left.`), make('ol', {}, ...items))];
}

// tellAmiss lists what is wrong, each with the way to its blank.
function tellAmiss(faults, error, answered) {
  const lines = faults.map((f) => {
    const told = faults.length === 1 && answered.verdict === 'refused' ? f.fix ?? '' : f.says + (f.fix ? '; ' + f.fix : '');
    const line = make('p', { class: 'fault' }, [f.key, told].filter(Boolean).join(': ') + '. ');
    if (f.mend) line.append(button(f.mend.label, () => mend(f.mend)), ' ');
    if (f.key) line.append(button('go there', () => visit(f.key), { 'aria-label': `go to ${f.key}` }));
    return line;
  });
  if (error) lines.push(make('p', { class: 'fault' }, error));
  amiss.replaceChildren(...lines);
}

// setsOf says what a mend fills in.
const setsOf = ({ sets }) => 'use ' + sets.map(({ value }) => /^[\d.]/.test(value) ? value : `“${value}”`).join(' and ');

const listOf = (heading, list) => list.length === 0 ? [] : [make('h3', {}, heading),
  make('ul', {}, ...list.map((m) => make('li', { class: m.advised ? 'advised' : '' }, `${m.label} `,
    button(setsOf(m), () => mend(m), { 'aria-label': `${m.label}: ${setsOf(m)}` }))))];
