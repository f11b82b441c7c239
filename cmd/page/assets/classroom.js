// A class: a roster, the small cases of all students with how they will fit, and their files.
import { ask, long } from './core.js';
import { $, button, make } from './dom.js';
import { faultLine, faultsOf } from './fields.js';
import { address, base64, nameOf } from './files.js';
import * as job from './job.js';
import { keep, kept } from './kept.js';
import { save } from './save.js';
import { working } from './working.js';

const place = make('section', { id: 'class', 'data-n': '8', 'aria-labelledby': 'class-head' });
$('keep').after(place);

let roster = kept('roster', null); // {name, text} or {name, file}: what was pasted, or a file
let made = { of: null };           // what was made last, and of what
let looked = false;
const mostKept = 200_000; // letters

const input = make('input', { type: 'file', id: 'open-roster', accept: '.csv,.tsv,.txt,text/csv', change: () => { if (input.files[0]) onTables(input.files[0]); input.value = ''; } });
const pasted = make('textarea', {
  id: 'roster', rows: '5', spellcheck: 'false', autocomplete: 'off', wrap: 'off', placeholder: 'name,title,height,width,thickness\nStudent 1,An invented book,210,148,12',
  input: () => take({ name: 'roster.csv', text: pasted.value }),
});
if (typeof roster?.text === 'string') pasted.value = roster.text;
else roster = null;
const based = make('input', { type: 'checkbox', id: 'based', change: () => take(roster) });
const faults = make('div', { class: 'faults', role: 'status', id: 'class-faults' });
const list = make('ul', { class: 'cases students', id: 'students' });
const care = make('p', { class: 'care' });

// take takes a roster; what was made of another is out of date.
function take(other) {
  roster = other;
  looked = false;
  if (roster?.text?.length < mostKept) keep('roster', roster);
  for (const w of [look, zip, pdf]) w.look();
  list.classList.add('stale');
}

const request = async (does) => ({
  do: does, name: roster.name, text: based.checked ? job.text() : '',
  data: await base64(roster.file ?? new Blob([roster.text])),
});

const look = working('Look at the cases', 'look-at-class', (p) => later(request('roster'), p), (got) => {
  if (tell(got)) return 'This table can’t be used as it is.';
  looked = true;
  list.classList.remove('stale');
  list.replaceChildren(...got.students.map(studentOf));
  for (const w of [zip, pdf]) w.look();
  const risky = got.students.filter((s) => s.risk).length;
  const out = got.students.filter((s) => s.faults?.length).length;
  return `${got.students.length} students: ` + [`${got.students.length - risky - out} fit`, risky && `${risky} may be too tight or too loose`, out && `${out} can’t be made`].filter(Boolean).join(', ') + '.';
}, () => !!roster);

const file = (words, id, name) => working(words, id, (p) => makeAll(p), (got) => {
  if (tell(got)) return 'Nothing is made.';
  const doc = got.files?.find((f) => f.name === name);
  if (!doc) return 'No student’s case can be made: see what is wrong.';
  save(doc);
  const out = got.students.filter((s) => s.faults?.length).length;
  return `Saved ${name}.` + (out ? ` ${out} of ${got.students.length} students are not in it: see what is wrong.` : '') + (name === 'print.pdf' ? ' Print it at actual size, 100 %.' : ' Open index.html in it: it leads to all files.');
}, () => !!roster && looked);
const zip = file('All files as one zip', 'class-zip', 'class.zip');
const pdf = file('All pages as one PDF, in order of names', 'class-pdf', 'print.pdf');

// later is long for a request that is still being put together.
function later(asked, progress) {
  let stopped = false;
  let work;
  const response = asked.then((q) => {
    if (stopped) throw new Error('stopped');
    work = long(q, progress);
    return work.response;
  });
  return { response, stop: () => { stopped = true; work?.stop(); } };
}

// makeAll makes the class, or has it already.
function makeAll(progress) {
  let of;
  const asked = request('class').then((q) => { of = JSON.stringify(q); return q; });
  let work;
  const response = asked.then((q) => {
    if (made.of === of) return made.response;
    work = later(Promise.resolve(q), progress);
    return work.response.then((got) => { made = { of, response: got }; return got; });
  });
  return { response, stop: () => work?.stop() };
}

// tell shows what is wrong with the table as a whole, and returns whether anything is.
function tell({ faults: wrong = [], warnings = [], error }) {
  faults.replaceChildren(...faultsOf(wrong, 20), ...warnings.map((f) => faultLine(f, 'look')), ...(error ? [make('p', { class: 'fault' }, error)] : []));
  return wrong.length > 0 || !!error;
}

function studentOf(s) {
  const wrong = s.faults ?? [];
  const picture = s.picture ? make('img', { class: 'shot', alt: '', src: address(s.picture), load: () => URL.revokeObjectURL(picture.src) }) : make('span', { class: 'shot' });
  return make('li', { class: s.risk || wrong.length > 0 ? 'risk' : '' }, picture, make('div', {}, make('b', {}, s.name || `line ${s.line}`), make('p', {}, s.title),
    ...(wrong.length > 0 ? wrong.map((f) => make('p', { class: 'fault' }, [f.key, f.says].filter(Boolean).join(': ') + (f.fix ? '; ' + f.fix : '') + '.')) : [make('p', { class: 'note says' }, s.says), ...(s.risk && s.advice ? [make('p', { class: 'note' }, s.advice)] : [])]),
    ...(s.warnings ?? []).map((f) => faultLine({ ...f, mend: undefined }, 'look'))));
}

// onTables takes a roster that is a file.
export async function onTables(table) {
  take({ name: nameOf(table), file: table });
  const text = await table.slice(0, 1 << 21).text();
  pasted.value = text;
  place.scrollIntoView();
  $('look-at-class').click();
}

place.append(make('h2', { id: 'class-head' }, 'A class'),
  make('p', { class: 'note' }, 'A roster is a table with a line of column names: name, height, width, thickness, and any of title, units or a key of the job file, such as board.thickness. A spreadsheet saves it as CSV. Drop it on the page, open it, or paste it here.'),
  make('p', { class: 'act' }, make('label', { for: 'open-roster' }, 'Open a roster ', input)),
  make('label', { for: 'roster' }, 'or paste it'), pasted,
  make('p', {}, make('label', { for: 'based' }, based, ' What the roster leaves out comes from the case above: board, cloth, paper, printer, sheets. Else it is at its usual value.')),
  ...look.elements, faults, list, ...zip.elements, ...pdf.elements, care);

let begun = false;
job.hear(async () => {
  if (begun) return;
  begun = true;
  care.textContent = (await ask({ do: 'outputs' })).outputs[0].care;
});
