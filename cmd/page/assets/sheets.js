// Section 6: what is printed, cut by and saved: the templates as they print, and all else
// folded away under what it is for.
import { ask } from './core.js';
import { $, button, make } from './dom.js';
import { drop, fieldsAt, row } from './fields.js';
import * as job from './job.js';
import { toolRow } from './shop.js';
import { outputOf } from './output.js';
import { save } from './save.js';

const place = $('sheets');
const templates = make('button', { type: 'button', id: 'templates', class: 'main', disabled: true }, 'Templates to print (PDF)');
place.append(make('p', { class: 'act' }, templates, make('span', { id: 'templates-told', class: 'note', role: 'status' })));

let begun = false;
let busy = false;

job.hear(({ answer }) => {
  templates.disabled = busy || !answer || ['refused', 'empty'].includes(answer.verdict);
  if (!begun && answer) build();
});

// build makes the section once the first answer is there: nothing of it is needed before.
async function build() {
  begun = true;
  const { outputs } = await ask({ do: 'outputs' });
  const fields = (await fieldsAt('sheets')).flatMap((s) => s.fields);
  const alone = outputs.flatMap((o) => o.keys ?? []);
  const own = (output) => fields.filter((f) => (output.keys ?? []).includes(f.key) || ((output.keys ?? []).includes(f.table) && !alone.includes(f.key)));
  for (const output of outputs) {
    const first = output === outputs[0];
    const shown = outputOf(output, ...toolRow(output.name), ...blanksOf(output, own(output)));
    if (first) {
      templates.addEventListener('click', () => saveTemplates(shown.ready));
      place.append(shown.element);
    } else {
      (output.place ? $(output.place) : place).append(make('details', { class: 'fold paper', id: 'paper-' + output.name }, make('summary', {}, make('h3', {}, output.title)), shown.element));
    }
  }
}

async function saveTemplates(ready) {
  busy = templates.disabled = true;
  $('templates-told').textContent = 'Drawing the sheets …';
  try {
    const doc = (await ready())?.files.find((f) => f.name === 'templates.pdf');
    if (doc) save(doc);
    $('templates-told').textContent = doc ? 'Saved. Print at actual size, 100 %, and measure the rulers.' : 'Not saved: see what is wrong.';
  } finally {
    busy = templates.disabled = false;
  }
}

// blanksOf returns the blanks of the job file that an output has for itself.
function blanksOf(output, fields) {
  if (fields.length === 0) return [];
  const lists = Object.keys(several).map((table) => fields.filter((f) => f.table === table)).filter((list) => list.length > 0).map(listOf);
  const own = fields.filter((f) => !f.list);
  if (own.length < 4) return [...own.map((f) => row(f)), ...lists];
  const mixed = new Set(own.map((f) => f.table)).size > 1;
  const rowOf = (f) => row(f, mixed ? { label: `${f.table}, ${f.label}` } : {});
  const rest = own.splice(output.name === 'quote' ? 2 : 1); // behind what matters most
  return [...own.map(rowOf), make('details', { class: 'fold' }, make('summary', {}, output.name === 'templates' ? 'Margins, ink and overlap' : 'All else that counts'), ...rest.map(rowOf), ...lists)];
}

// several are the tables that there may be several of: what one is called, the words that add
// one, and what a new one has, to be typed over (sizes: common practice, no source).
const several = {
  stock: ['sheet or roll', 'a sheet or a roll that you own', (fields) => ({ material: fields.find((f) => f.key === 'stock.material').words[0], size: '700 x 1000 mm' })],
  extra: ['line', 'a line of your own, such as a label or a discount', () => ({ text: 'something more', amount: '0' })],
};

// listOf returns the blanks of a table that there may be several of.
function listOf(fields) {
  const { table } = fields[0];
  const [called, words, fresh] = several[table];
  const group = make('div', { class: 'owned' });
  const name = (n) => (n === 0 ? table : `${table}[${n + 1}]`);
  let had = 0;
  const add = button(words, () => job.set(...Object.entries(fresh(fields)).map(([key, value]) => ({ key: `${name(had)}.${key}`, value }))));
  job.hear(({ state }) => {
    if (!state) return;
    const has = state.lists[table] ?? 0;
    if (has === had && group.children.length === had) return;
    had = has;
    drop(group);
    group.replaceChildren(...Array.from({ length: had }, (_, n) => make('fieldset', {}, make('legend', {}, `${called} ${n + 1}`),
      ...fields.map((f) => row(f, { key: name(n) + f.key.slice(table.length) })),
      button('take it out', () => job.set({ key: name(n), gone: true }), { 'aria-label': `take out ${called} ${n + 1}` }))));
  });
  return make('div', {}, group, make('p', {}, add));
}
