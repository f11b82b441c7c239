// Section 1: the book, on a drawing whose dimension lines hold the blanks. Several volumes
// are several drawings at one scale, and one of all as they stand in the case.
import { drawBook, drawShelf } from './bookdrawing.js';
import { $, button, idOf, make } from './dom.js';
import { drop, field, fieldsAt, row } from './fields.js';
import * as job from './job.js';

const place = $('book');
const onDrawing = ['height', 'width', 'thickness'];
const [section] = await fieldsAt('book');
const unit = make('b', {}, 'mm');
const invented = make('p', { id: 'invented', class: 'note' }, 'The book below is invented. Type your own over it, or ',
  button('begin with empty blanks', () => job.empty(), { class: 'plain' }), '.');
const shelf = make('figure', { id: 'shelf' });
const volumes = make('div', { id: 'volumes' });
const told = make('p', { id: 'volume-told', class: 'note', role: 'status' });
const another = button('another volume beside it', addVolume, { id: 'another-volume', class: 'plain' });

place.append(
  make('p', { class: 'note' }, 'Shut, lightly pressed. Measure each way at several places, one reading after the other (Enter goes on): the largest, in bold, counts. Any way of writing a length will do: 221.5, 23,5 cm, 9 1/4 in. A bare number is in ', unit, '.'),
  invented, shelf, volumes, make('p', {}, another), told);

const built = []; // what shows each volume

job.hear(async ({ state }) => {
  if (!state) return;
  unit.textContent = state.unit;
  invented.hidden = !job.invented();
  while (built.length > state.books.length) {
    const { element } = built.pop();
    drop(element);
    element.remove();
  }
  while (built.length < state.books.length) built.push(volume(built.length));
  const scale = Math.max(...state.books.map(extent));
  built.forEach((v, i) => v.show(state, scale, i));
  shelf.hidden = state.books.length < 2;
  shelf.replaceChildren(...(shelf.hidden ? [] : [drawShelf(state.books), make('figcaption', { class: 'note' }, 'As they stand in the case, looking into its mouth.')]));
});

// how moves what a row of a drawing tells below the drawing, where there is room.
const how = (line) => {
  const label = line.querySelector('label').textContent;
  return make('div', { class: 'how' }, make('b', { class: 'note' }, label), ' ', line.querySelector('.note'), line.querySelector('.faults'));
};

const most = Object.fromEntries(section.fields.map((f) => [f.label, f.max]));
const extent = ({ sizes }) => Math.max(...['height', 'width'].map((d) => sizes[d] <= most[d] ? sizes[d] : 40));

// keyOf names a dimension of the nth book, from 0, as the job file's messages do.
const bookKey = (n) => n === 0 ? 'book' : `book[${n + 1}]`;

// volume makes the drawing of a book with its blanks.
function volume(n) {
  const key = bookKey(n);
  const whose = n === 0 ? '' : ` of volume ${n + 1}`;
  const drawing = make('figure', { class: 'drawing' });
  const heading = make('h3', { hidden: true }, `Volume ${n + 1}`);
  const moves = make('p', { class: 'moves', hidden: true },
    button('one place to the left', () => swap(n, n - 1), { 'aria-label': `Volume ${n + 1}: one place to the left`, class: 'plain' }),
    button('one place to the right', () => swap(n, n + 1), { 'aria-label': `Volume ${n + 1}: one place to the right`, class: 'plain' }),
    button('take it out', () => takeOut(n), { 'aria-label': `Volume ${n + 1}: take it out`, class: 'plain' }));
  const parts = section.fields.map((f) => {
    const own = { key: f.key.replace('book', key), label: f.label, named: f.label + whose };
    if (!onDrawing.includes(f.label)) return row(f, own);
    const line = row(f, { ...own, id: n === 0 ? f.label : undefined });
    line.classList.add('dimension', f.label);
    return line;
  });
  const [on, off] = [parts.filter((p) => p.classList.contains('dimension')), parts.filter((p) => !p.classList.contains('dimension'))];
  const plausible = {}; // sizes as last measured within their limits
  const element = make('div', { class: 'volume', role: 'group', 'aria-label': n === 0 ? 'The book' : `Volume ${n + 1}` }, heading,
    make('div', { class: 'board' }, drawing, ...on), ...on.map(how),
    make('details', { class: 'fold' }, make('summary', {}, 'more about this book'), ...off), moves);
  volumes.append(element);
  return {
    element,
    show(state, scale, i) {
      const many = state.books.length > 1;
      heading.hidden = moves.hidden = !many;
      heading.textContent = `Volume ${i + 1}` + (state.books[i].title ? `: ${state.books[i].title}` : '');
      moves.children[0].disabled = i === 0;
      moves.children[1].disabled = i === state.books.length - 1;
      const sizes = {};
      for (const f of section.fields.filter((f) => f.kind === 'readings')) {
        const mm = state.books[i].sizes[f.label];
        if (mm >= f.min && mm <= f.max) plausible[f.label] = mm;
        if (mm !== undefined) sizes[f.label] = plausible[f.label];
      }
      drawing.replaceChildren(drawBook({ ...state.books[i], sizes }, scale));
    },
  };
}

async function addVolume() {
  const key = bookKey(built.length);
  await job.set(...onDrawing.map((d) => ({ key: `${key}.${d}`, value: '' })));
  $(idOf(`${key}.height`))?.focus();
}

async function swap(n, to) {
  await job.set({ key: bookKey(Math.min(n, to)), swap: bookKey(Math.max(n, to)) });
  told.textContent = `Volume ${n + 1} and volume ${to + 1} have changed places.`;
}

// takeOut takes a volume out; what was typed for it can be put back.
async function takeOut(n) {
  const key = bookKey(n);
  const was = Object.entries(job.now().state.values).filter(([k]) => k.startsWith(key + '.'));
  await job.set({ key, gone: true });
  told.replaceChildren(`Volume ${n + 1} is taken out. `, button('put it back', async () => {
    const back = bookKey(built.length);
    await job.set(...was.map(([k, value]) => ({ key: back + k.slice(key.length), value })));
    for (let at = built.length - 1; at > n; at--) await job.set({ key: bookKey(at - 1), swap: bookKey(at) });
    told.textContent = `Volume ${n + 1} is back.`;
  }, { class: 'plain' }));
  another.focus();
}
