// Section 7: the cases made on this machine, the job as a file, as a link, and everything.
import { caseOf, cases, pictureOf, remove, bringBack } from './cases.js';
import { copy, isSaved, left, onChange, receive, saved, turnToCase, turnToNew } from './athand.js';
import { onTables } from './classroom.js';
import { long } from './core.js';
import { $, button, make } from './dom.js';
import { faultsOf, placed } from './fields.js';
import { address, fileName, isTable, nameOf, onDrop } from './files.js';
import * as job from './job.js';
import { atHand, keep, kept, lasts, onLasts } from './kept.js';
import { holds, linkOf, unlinked } from './link.js';
import { beside } from './records.js';
import { save } from './save.js';
import { look, onTogether, tick } from './together.js';
import { working } from './working.js';

const told = make('div', { id: 'keep-told', class: 'faults', role: 'status' });
const last = make('p', { id: 'keep-last', class: 'note' });
const lost = make('div', { id: 'keep-lost', role: 'status' });
const list = make('ul', { id: 'cases', class: 'cases' });
const undo = make('p', { id: 'keep-undo', role: 'status' });
const several = make('p', { class: 'note' }, 'Tick cases to make them together with the case at hand: to buy, order and price them as one, and to time them for one bench.');
const link = make('p', { id: 'keep-link', class: 'row wide', hidden: true });

const tell = (...lines) => told.replaceChildren(...lines.map((line) => typeof line === 'string' ? make('p', {}, line) : line));
const quoted = (c) => `“${c.title || 'no name yet'}”`;
const when = (ms) => new Date(ms).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' });

// The job as a file.
const input = make('input', { type: 'file', id: 'open-job', accept: '.toml,text/plain', multiple: true, change: () => openAll([...input.files]).then(() => { input.value = ''; }) });

async function openAll(files) {
  const lines = [];
  for (const file of files) {
    const faults = await receive(file, nameOf(file)).catch((err) => [{ says: err.message }]);
    if (faults.length > 0) lines.push(...notRead(nameOf(file), faults));
    else lines.push(`${nameOf(file)} is open, as a case of its own.`);
  }
  tell(...lines);
}

const mostTold = 8; // lines of faults

const notRead = (name, faults) => [make('p', { class: 'fault' }, `${name} can’t be read; the case at hand is as it was.`),
  ...faultsOf(faults, mostTold)];

function saveJob() {
  save({ name: fileName(job.now().state?.values.title ?? '', 'case') + '.toml', type: 'application/toml', data: job.text() });
  saved();
  tell(job.untaken().length > 0 ? 'Saved, but for what is at fault at its blank: the job file can’t take that.' : 'Saved. Any forel opens it, this page or the command line’s.');
}

// The link.
async function showLink() {
  const part = await linkOf(job.text());
  if (!part) return tell(make('p', { class: 'fault' }, 'This job is too long for a link: send its job file.'));
  const blank = make('input', { type: 'text', id: 'link-of', readonly: true, value: location.href.split('#')[0] + part });
  const copied = make('span', { class: 'note', role: 'status' });
  link.replaceChildren(make('label', { for: 'link-of' }, 'the link'), make('span', { class: 'answer' }, blank, ' ', button('copy the link', async () => {
    blank.select();
    copied.textContent = await navigator.clipboard.writeText(blank.value).then(() => 'Copied.', () => 'Selected: copy it with your keys.');
  })), copied, make('span', { class: 'note' }, location.protocol === 'file:'
    ? 'This page is a file of your machine, and the link names its place there: it works here alone. For someone else send the job file, or make the link on a web address.'
    : 'The job is in the part after “#”, which your browser sends to nobody. Whoever has the link can read it.'));
  link.hidden = false;
  blank.select();
}

async function openLink() {
  const { hash } = location;
  if (!holds(hash)) return false;
  history.replaceState(null, '', location.href.split('#')[0]); // so that a reload opens it no second time
  const faults = await unlinked(hash).then((blob) => receive(blob, 'the link'), (err) => [{ says: err.name === 'Error' ? err.message : 'it is cut short or changed; ask for it again' }]);
  if (faults.length === 0) tell('This case came with a link. It is a case of its own; your others are below.');
  else tell(...notRead('The job in the link', faults));
  return true;
}

// Everything.
const everything = working('Everything as one zip', 'everything', (progress) => long({ do: 'everything', text: job.text(), ...beside() }, progress), ({ files, faults, error }) => {
  if (!files?.length) return faults?.[0] ? placed(faults[0]) : error;
  save({ ...files[0], name: fileName(job.now().state?.values.title ?? '', 'case') + '.zip' });
  return 'Saved: the job file, the templates, the handout, the lists, the plan of sheets, the fit and the proof. Beds for a machine are not in it.';
});

// The list.
function show() {
  const { there, gone } = cases();
  const focused = document.activeElement?.dataset.of;
  list.replaceChildren(...there.map(itemOf));
  if (focused) list.querySelector(`[data-of="${CSS.escape(focused)}"]`)?.focus();
  undo.replaceChildren(...gone.slice(-1).flatMap((c) => [`${quoted(c)} is deleted. `, button('bring it back', () => { bringBack(c.id); show(); list.querySelector(`[data-of="open ${CSS.escape(c.id)}"]`)?.focus(); })]));
  const c = caseOf(atHand());
  last.textContent = !c ? 'This is the case that the page begins with. Yours is kept in this browser from the first thing you type.'
    : !c.saved ? 'Kept in this browser, and not yet saved as a file.'
      : `Saved as a file ${when(c.saved)}` + (isSaved(c) ? '.' : ', and changed since.');
  everything.look();
  several.hidden = there.length < 2;
  look();
  warn();
}

let asked = ''; // the case that is asked about, whether to delete it

function itemOf(c) {
  const picture = pictureOf(c.id);
  const here = c.id === atHand();
  const open = button(c.title || 'no name yet', async () => { if (!here) await turnToCase(c.id); tell(`${quoted(c)} is open.`); $('book').scrollIntoView(); }, { 'data-of': 'open ' + c.id, 'aria-current': here ? 'true' : undefined });
  const acts = asked === c.id
    ? [`Delete ${quoted(c)}? `, button('delete it', () => del(c), { 'data-of': 'sure ' + c.id }), ' ', button('keep it', () => ask(''))]
    : [button('copy', () => copy(c.id).then(() => tell(`A copy of ${quoted(c)} is open.`)), { 'aria-label': `copy ${quoted(c)}` }), ' ',
      button('delete', () => ask(c.id), { 'aria-label': `delete ${quoted(c)}` })];
  return make('li', {}, shotOf(c, picture),
    make('div', {}, open, make('p', { class: 'note' }, [c.kind, c.sizes, here && 'at hand'].filter(Boolean).join(' · ')), make('p', { class: 'note' }, when(c.changed)), make('p', { class: 'acts' }, ...acts), ...(here ? [] : [make('p', { class: 'note' }, tick(c))])));
}

const shots = new Map(); // by case, so that no picture is read again where it is the same

function shotOf({ id, title }, svg) {
  const had = shots.get(id);
  if (had?.svg === svg && had.title === title) return had.element;
  const element = svg ? make('img', { class: 'shot', alt: `the finished case${title ? ' of ' + title : ''}`, src: address(svg), load: () => URL.revokeObjectURL(element.src) }) : make('span', { class: 'shot' });
  shots.set(id, { svg, title, element });
  return element;
}

function ask(id) {
  asked = id;
  show();
  if (id) list.querySelector(`[data-of="sure ${CSS.escape(id)}"]`)?.focus();
}

async function del(c) {
  asked = '';
  remove(c.id);
  if (c.id === atHand()) await left();
  show();
  undo.querySelector('button')?.focus();
}

// warn says once that a browser may clear what it keeps, and each time that it keeps nothing.
function warn() {
  const says = !lasts() ? [make('p', { class: 'fault' }, 'This browser keeps no more for this page: its storage is full or forbidden. All works on, but save the job file before you close it. ', button('save the job file', saveJob))]
    : atHand() && !kept('warned', false) ? [make('p', {}, 'A browser may clear at any time what it keeps for a page. The copy that lasts is the job file. ',
      button('save the job file', () => { keep('warned', true); saveJob(); }), ' ', button('I know', () => { keep('warned', true); warn(); $('save-job').focus(); }))]
      : [];
  if (lost.textContent !== says.map((p) => p.textContent).join('')) lost.replaceChildren(...says);
}

addEventListener('beforeunload', (event) => {
  const c = caseOf(atHand());
  if (!lasts() && c && !isSaved(c)) event.preventDefault();
});

$('keep').append(
  last, lost,
  make('p', { class: 'act' }, button('Save the job file', saveJob, { id: 'save-job' }), make('label', { for: 'open-job' }, 'Open a job file, or drop it on the page ', input), button('A link to it', showLink, { id: 'make-link' })),
  ...everything.elements, link, told,
  make('h3', { id: 'cases-head' }, 'Cases made on this machine'), several, undo, list,
  make('p', {}, button('Begin another case', () => turnToNew().then(() => { tell('A new case: type in what you measured.'); $('book').scrollIntoView(); }), { id: 'begin-another' })));
$('ways').prepend(make('a', { href: '#keep' }, 'your cases'), make('a', { href: '#class' }, 'a class'));

let soon;
onChange((says) => {
  if (says) tell(says);
  clearTimeout(soon);
  soon = setTimeout(show, 200); // not at every key press
});
onLasts(show);
onTogether(show);
addEventListener('hashchange', openLink);
onDrop((files) => {
  const tables = files.filter(isTable);
  if (tables.length > 0) onTables(tables[0]);
  const jobs = files.filter((f) => !isTable(f));
  if (jobs.length > 0) openAll(jobs).then(() => $('keep').scrollIntoView());
});

export { openLink };
