// Section 4: whether the book will fit, the tightest place, and what to do about it.
import { Newest } from './core.js';
import { $, button, make } from './dom.js';
import { draw } from './drawing.js';
import { mend, nameOf, visit } from './fields.js';
import * as job from './job.js';

const place = $('fit');
const pictures = new Newest();
const odds = make('p', { id: 'odds' });
const amiss = make('div', { id: 'amiss' });
const finished = make('figure', { id: 'case' });
const tightest = make('figure', { id: 'tightest' });
const doubts = make('div', { id: 'doubts' });
const more = make('div', { id: 'more' });
const mends = make('div', { id: 'mends' });
const numbers = make('dl', { id: 'numbers' });
place.append(odds, amiss, make('div', { class: 'pictures' }, finished, tightest), doubts, more, mends, numbers);

let of = ''; // the job file that the pictures are of

// drawn returns it: what can't be made keeps the pictures of what could.
export const drawn = () => of;

// onDrawn calls back with the picture of each case that is drawn, SVG.
export const onDrawn = (back) => lookers.push(back);
const lookers = [];

job.hear(({ answer, faults = [], error, opened }) => {
  if (!answer) return;
  const made = !['refused', 'empty'].includes(answer.verdict);
  for (const line of [$('verdict'), $('line')]) {
    line.textContent = answer.says;
    line.dataset.verdict = answer.verdict;
  }
  odds.textContent = answer.chances ?? '';
  const wrong = faults.filter((f) => !f.empty);
  amiss.replaceChildren(...wrong.map((f) => pointer(f, wrong.length === 1 && answer.verdict === 'refused')), ...(error ? [make('p', { class: 'fault' }, error)] : []));
  doubts.replaceChildren(...(answer.warnings ?? []).map((f) => pointer(f, false, 'look')));
  if (opened && !made) for (const figure of [finished, tightest]) figure.replaceChildren(); // they are of another case
  place.classList.toggle('stale', !made);
  if (!made) {
    of = job.text();
    return;
  }
  more.replaceChildren(...(answer.more ?? []).map((line) => make('p', {}, line)));
  mends.replaceChildren(...listOf(`What would ${answer.verdict === 'fits' ? 'make it surer' : 'mend it'}, the least effort first`, answer.mends ?? []));
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

// pointer tells of a fault, with the way to its blank; said: the verdict has said it.
function pointer(f, said, manner = '') {
  const name = nameOf(f.key);
  const told = said ? f.fix ?? '' : f.says + (f.fix ? '; ' + f.fix : '');
  const line = make('p', { class: 'fault ' + manner }, [name, told].filter(Boolean).join(': ') + '. ');
  if (f.mend) line.append(button(f.mend.label, () => mend(f.mend)), ' ');
  if (f.key) line.append(button('go there', () => visit(f.key), { 'aria-label': `go to ${name}` }));
  return line;
}

// setsOf says what a mend fills in.
const setsOf = ({ sets }) => 'use ' + sets.map(({ value }) => /^[\d.]/.test(value) ? value : `“${value}”`).join(' and ');

const listOf = (heading, list) => list.length === 0 ? [] : [make('h3', {}, heading),
  make('ul', {}, ...list.map((m) => make('li', { class: m.advised ? 'advised' : '' }, `${m.label}. `, button(setsOf(m), () => mend(m), { 'aria-label': `${m.label}: ${setsOf(m)}` }), make('span', { class: 'note' }, ` ${m.then}.`))))];
