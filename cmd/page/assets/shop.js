// The shop: what a maker has for all cases, kept as the text of one shop file. Every
// question to the program brings it (core.js).
import { ask } from './core.js';
import { button, idOf, make } from './dom.js';
import { add, faultLine } from './fields.js';
import * as job from './job.js';
import { elsewhere, keep, kept } from './kept.js';
import { save } from './save.js';

const most = 1 << 20; // characters that are kept, more than the program reads
const hearers = [];
const shop = () => String(kept('shop', ''));

// onShop calls back when the shop has changed.
export const onShop = (back) => hearers.push(back);

// setShop puts another text in place of the shop file.
export async function setShop(text) {
  keep('shop', text.slice(0, most));
  await renew();
}

async function renew() {
  for (const back of hearers) back();
  await Promise.all([look(), job.text() && job.set()]); // the job may take from it
}

const rows = new Map(); // what fills each, by the key that names what is taken
let { offers } = await ask({ do: 'shop' });

const offered = (material) => offers.find((o) => o.material === material)?.names ?? [];

// pick returns a row that takes something from the shop, by the key that names it; what is told
// of it here, under the keys that own returns, goes before and is taken out.
function pick(material, named, own, note) {
  const id = idOf(material);
  const faults = make('div', { class: 'faults', id: id + '-faults' });
  const select = make('select', { id, 'aria-describedby': `${id}-note ${faults.id}`, 'aria-label': `${named}, from my shop`, change: () => job.set(...(select.value
    ? [{ key: material, value: select.value }, ...own().map((key) => ({ key, gone: true }))]
    : [{ key: material, gone: true }])) });
  const row = make('div', { class: 'row' }, make('label', { for: id }, 'from my shop'), make('span', { class: 'answer' }, select),
    make('p', { class: 'note', id: id + '-note' }, note), faults);
  const fill = (typed) => {
    const names = [...new Set([...offered(material), typed].filter(Boolean))];
    select.replaceChildren(make('option', { value: '' }, 'as typed here'), ...names.map((n) => make('option', { value: n }, n)));
    select.value = typed;
    row.hidden = names.length === 0;
  };
  rows.set(material, fill);
  add(material, { element: select, field: { key: material }, faults, fill });
  return row;
}

// shopRow returns the row beneath a thickness that takes the material from the shop.
export function shopRow(thickness, name) {
  const { material, known, name: called } = offers.find((o) => o.thickness === thickness);
  const row = pick(material, name, () => [thickness, known, called].filter(Boolean), 'Its thickness and name are then as your shop has them; what you type here goes before.');
  const grows = button(name, () => grow({ do: 'add', name: thickness, text: job.text() }, `The ${name} is in your shop.`), { 'aria-label': `add the ${name} to my shop` });
  adds.append(grows, ' ');
  job.hear(({ state }) => { if (state) grows.hidden = state.unused.includes(thickness); });
  return row;
}

// tools are what is made with, by output: the key that names it, and what of its table is
// not its own.
const tools = { templates: ['print.printer', 'the printer', ['print.overlap', 'print.ink']], cutter: ['machine.cutter', 'the machine', []] };

// toolRow returns the row that takes the printer or the machine of an output from the shop.
export function toolRow(output) {
  if (!tools[output]) return [];
  const [key, named, apart] = tools[output];
  const own = () => Object.keys(job.now().state.values).filter((k) => k.startsWith(key.split('.')[0] + '.') && ![key, ...apart].includes(k));
  return [pick(key, named, own, `All of ${named} is then as your shop has it; what you type here goes before.`)];
}

const adds = make('p', {}, 'Add what you measured to it: ');
const list = make('pre', { tabindex: '0', role: 'region', 'aria-label': 'what your shop has' });
const told = make('div', { class: 'faults', role: 'status', id: 'shop-told' });
const wrong = make('div', { class: 'faults', id: 'shop-faults' });
let soon;
const area = make('textarea', { id: 'shop-text', rows: '12', spellcheck: 'false', autocomplete: 'off', maxlength: String(most), 'aria-describedby': wrong.id, input: () => {
  clearTimeout(soon);
  soon = setTimeout(() => setShop(area.value), 400);
} });
const input = make('input', { type: 'file', id: 'open-shop', accept: '.toml,text/plain', change: async () => {
  const [file] = input.files;
  if (file && (await file.slice(0, most + 1).text()).length <= most) await setShop(await file.text());
  else if (file) told.replaceChildren(make('p', { class: 'fault' }, 'This file is too large for a shop file.'));
  input.value = '';
} });

// grown asks for a new text of the shop file, keeps it, and returns what to say of it.
async function grown(request) {
  const got = await ask(request);
  if (got.shop !== undefined) await setShop(got.shop);
  return { ...got, lines: [...(got.faults ?? []).map((f) => faultLine({ ...f, says: [f.key, f.says].filter(Boolean).join(': ') })), ...[got.error, ...(got.notes ?? [])].filter(Boolean).map((n) => make('p', {}, n))] };
}

async function grow(request, done) {
  const { shop, lines } = await grown(request);
  told.replaceChildren(...lines, ...(shop === undefined ? [] : [done]));
}

// adopt makes changes to the habits of the shop, and returns what to say of it.
export const adopt = (changes) => grown({ do: 'adopt', changes, text: job.text() }).then(({ lines }) => lines);

export const shopFold = make('details', { class: 'fold', id: 'shop' }, make('summary', {}, 'your shop: what you have for all your cases'),
  make('p', { class: 'note' }, 'Materials, printers, machines, offcuts and habits, in one file that the command line reads too. It is kept in this browser: save it.'),
  adds, list, told,
  make('p', { class: 'act' }, button('Save the shop file', () => save({ name: 'shop.toml', type: 'application/toml', data: shop() }), { id: 'save-shop' }), ' ',
    button('Take the last taking back', () => grow({ do: 'untake' }, 'Taken back: throw its labels away.'), { id: 'untake' })),
  make('p', {}, make('label', { for: 'open-shop' }, 'Open a shop file in place of it ', input)),
  make('label', { for: 'shop-text' }, 'The file itself'), area, wrong);

async function look() {
  const { report = '', faults = [], error, ...got } = await ask({ do: 'shop' });
  offers = got.offers ?? offers;
  for (const [material, fill] of rows) fill(job.typed(material));
  list.textContent = report || 'Nothing yet.';
  wrong.replaceChildren(...faults.map((f) => faultLine(f)), ...(error ? [make('p', { class: 'fault' }, error)] : []));
  area.setAttribute('aria-invalid', String(faults.length > 0));
  if (document.activeElement !== area) area.value = shop();
}

// begin shows what the shop has, once its rows are there.
export const begin = look;
elsewhere((name) => { if (['shop', ''].includes(name)) renew(); });
