// Blanks: each is a key of the job file. Rows are made from the table of fields, which Go
// has; what is wrong with a key stands beneath its blank.
import { ask } from './core.js';
import { button, idOf, make } from './dom.js';
import * as job from './job.js';
import { readings } from './readings.js';

const tables = {};         // sections of the table, by unit
const blanks = new Map();  // by key: {element, field, fill, faults, renew}

// table returns the sections of the table of fields with defaults round in a unit.
export const table = (unit) => tables[unit] ??= ask({ do: 'fields', unit }).then((got) => got.sections);

// fieldsAt returns the sections with those fields that belong to one place of the page.
export async function fieldsAt(place, unit = 'mm') {
  return (await table(unit))
    .map((s) => ({ ...s, fields: s.fields.filter((f) => f.place === place) }))
    .filter((s) => s.fields.length > 0);
}

// field returns the field of a key.
export async function field(key, unit = 'mm') {
  const first = key.replace(/\[\d+\]/, '');
  return (await table(unit)).flatMap((s) => s.fields).find((f) => f.key === first);
}

// add makes the blank of a key known: fill(typed) shows what is typed, unless a maker is
// typing in element just now; faults is where its faults go.
export function add(key, blank) {
  blanks.set(key, blank);
  blank.fill(job.typed(key), job.now().state);
}

// drop forgets the blanks within an element.
export function drop(element) {
  for (const [key, blank] of blanks) if (element.contains(blank.element)) blanks.delete(key);
}

// nameOf returns what a maker calls a key: "volume 2, height" for book[2].height.
export const nameOf = (key) => key.replace(/^book\[(\d+)\]/, 'volume $1').replace(/^book\./, '').replace(/\[(\d+)\]/, ' $1').replaceAll('.', ', ').replaceAll('_', ' ');

// visit goes to the blank of a key and returns whether there is one.
export function visit(key) {
  const blank = blanks.get(key);
  if (!blank || blank.element.closest('[hidden]')) return false;
  for (let fold = blank.element.closest('details'); fold; fold = fold.parentElement.closest('details')) fold.open = true;
  (blank.element.querySelector('input, select') ?? blank.element).focus();
  return true;
}

// row returns a field with its name, its blank and what it does. words are, where they
// differ from the field's own: key, id, label, named (for a screen reader).
export function row(field, words = {}) {
  const key = words.key ?? field.key;
  const id = words.id ?? idOf(key);
  const note = make('p', { class: 'note', id: id + '-note' });
  const faults = make('div', { class: 'faults', id: id + '-faults' });
  const attributes = { id, 'aria-describedby': `${note.id} ${faults.id}`, 'aria-label': words.named };
  const own = field.kind === 'readings' && readings(key, field.required, { ...attributes, 'aria-label': words.named ?? words.label ?? field.label });
  const element = own ? own.element : control(field, { key, ...attributes });
  const renew = (fresh) => {
    note.textContent = noteOf(fresh);
    if (element.tagName === 'INPUT') element.placeholder = fresh.default;
  };
  renew(field);
  add(key, { element, field, faults, renew, fill: own ? own.fill : ((typed) => fill(element, field, typed)) });
  const wide = field.words?.some((w) => w.length > 18) ? ' wide' : '';
  return make('div', { class: 'row' + wide, 'data-row': key },
    make('label', { for: id }, words.label ?? field.label), make('span', { class: 'answer' }, element), note, faults);
}

// control returns the blank of a field. An empty one leaves the key at its usual value.
export function control(field, { key = field.key, ...attributes } = {}) {
  const change = ({ target: { value } }) => job.set(value.trim() === '' && !field.required ? { key, gone: true } : { key, value });
  if (field.kind === 'choice') {
    return make('select', { ...attributes, change }, ...field.words.map((w) => make('option', { value: w }, w)));
  }
  return make('input', { type: 'text', autocomplete: 'off', spellcheck: 'false', ...attributes, input: change });
}

function fill(element, field, typed) {
  if (element.tagName === 'SELECT') {
    const wanted = typed || field.default;
    if (![...element.options].some((o) => o.value === wanted)) element.append(make('option', { value: wanted }, wanted));
    element.value = wanted;
  } else if (element !== document.activeElement) {
    element.value = typed;
  }
}

const noteOf = (field) => [field.says || field.what, field.range?.replace(/ (?=mm|in|g|%)/g, '\u00a0')].filter(Boolean).join(' · ');

let unit = 'mm';

job.hear(async ({ state, faults = [], answer }) => {
  if (state) {
    for (const [key, blank] of blanks) blank.fill(job.typed(key), state);
    leaveOut(state.unused, [...faults, ...(answer?.warnings ?? [])].map((f) => f.key));
  }
  tell(faults, answer?.warnings ?? []);
  if (state && state.unit !== unit) {
    unit = state.unit;
    for (const [key, blank] of blanks) blank.renew?.(await field(key, unit));
  }
});

// leaveOut hides what this kind has no use for, but where there is something to tell.
function leaveOut(unused, told) {
  for (const line of document.querySelectorAll('[data-row]')) {
    const key = line.dataset.row;
    line.toggleAttribute('data-set', job.typed(key) !== '');
    line.hidden = unused.includes(key.replace(/\[\d+\]/, '')) && !told.includes(key);
  }
  for (const group of document.querySelectorAll('.group')) {
    group.hidden = !group.querySelector('[data-row]:not([hidden])');
  }
}

// tell puts what is wrong beneath its blank.
function tell(faults, warnings) {
  const shown = faults.filter((f) => !f.empty);
  for (const [key, blank] of blanks) {
    const mine = (list) => list.filter((f) => f.key === key);
    const lines = [...mine(shown).map((f) => faultLine(f)), ...mine(warnings).map((f) => faultLine(f, 'look'))];
    if (blank.faults.textContent !== lines.map((l) => l.textContent).join('')) blank.faults.replaceChildren(...lines);
    const controls = blank.element.matches('input, select') ? [blank.element] : blank.element.querySelectorAll('input');
    for (const c of controls) c.setAttribute('aria-invalid', String(mine(shown).length > 0 && c.placeholder !== 'another'));
  }
  for (const fold of document.querySelectorAll('details.fold')) {
    if (fold.querySelector('.fault:not(.look, :empty)')) fold.open = true;
    fold.classList.toggle('looked', !!fold.querySelector('.fault:not(:empty)'));
  }
}

// faultLine tells of a fault, with its mend as a button.
export function faultLine(fault, manner = '') {
  const line = make('p', { class: 'fault ' + manner }, fault.says + (fault.fix ? '; ' + fault.fix : '') + '. ');
  if (fault.mend) line.append(button(fault.mend.label, () => mend(fault.mend)));
  return line;
}

// placed says where in a file a fault is, and what it is.
export const placed = (f) => [f.line && `line ${f.line}`, f.key, f.says].filter(Boolean).join(': ');

// faultsOf tells of no more than most faults of a file, and how many more there are.
export const faultsOf = (all, most) => [...all.slice(0, most).map((f) => faultLine({ ...f, mend: undefined, says: placed(f) })),
  ...(all.length > most ? [make('p', { class: 'fault' }, `And ${all.length - most} more.`)] : [])];

// mend does what a mend says, and goes to the blank that it fills.
export async function mend({ sets }) {
  visit(sets[0].key);
  document.activeElement.blur?.(); // so that the blank takes what the mend says
  await job.set(...sets);
  visit(sets[0].key);
}
