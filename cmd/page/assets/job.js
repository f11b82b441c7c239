// The job: the text of its job file is the page's state; every blank is one of its keys.
import { Newest, ask } from './core.js';

const answers = new Newest();
const listeners = [];
const refused = new Map(); // what was typed where the job file could not take it, by key
let changes = [];          // what was typed since the last answer
let response = {};

// now is the newest answer: text, state, answer, faults, error. See the doc of cmd/page.
export const now = () => response;
export const text = () => response.text ?? '';

// hear calls back with each new answer, at once if there is one.
export function hear(back) {
  listeners.push(back);
  if (response.text !== undefined) back(response);
}

// typed is what stands in the blank of a key: what the job file says, or what it could
// not take.
export const typed = (key) => refused.get(key) ?? response.state?.values[key] ?? '';

// untaken is what was typed that the text does not have: not answered yet, or refused.
export const untaken = () => [...[...refused].map(([key, value]) => ({ key, value })), ...changes];

// onTyped calls back as soon as something is typed, before it is answered.
export const onTyped = (back) => typists.push(back);
const typists = [];

// set makes changes to the job: {key, value}, or {key, gone: true}.
export async function set(...more) {
  performance.mark('changed');
  changes.push(...more);
  for (const back of typists) back();
  await beginning; // what is typed at once waits for what it is typed over
  const asked = changes.length;
  let got;
  try {
    got = await answers.ask({ do: 'set', text: base(), changes: [...changes] });
  } catch (err) {
    got = { error: err.message };
  }
  if (!got) return; // there is a newer state
  for (const { key, value } of changes.splice(0, asked)) {
    if (got.text === undefined && value !== undefined) refused.set(key, value);
    else refused.delete(key);
  }
  take(got);
}

// base is the text that changes are made to.
function base() {
  const measured = changes.some(({ key }) => key.startsWith('book'));
  return measured && plain && text() === begun?.text ? plain : text();
}

// open puts the text of another job file in place of this one.
export async function open(other, source) {
  changes = [];
  refused.clear();
  response = { ...response, text: other }; // what is typed from now on belongs to it
  const got = await answers.ask({ do: 'open', text: other, source });
  if (got) take({ ...got, opened: true });
}

let begun; // the answer that the page began with, and the same job without a word of its
let plain; // being invented, for who types over it

// start begins with a job that was kept, {text, source}, else with the invented book.
export const start = (before) => (beginning = begin(before));
let beginning;

async function begin(before) {
  if (before) await open(before.text, before.source);
  begun = await ask({ do: 'new', example: true });
  if (!before) take(begun);
  const { title, ...books } = begun.state.values;
  plain = (await ask({ do: 'new', flags: { title, ...books } })).text;
}

// invented tells whether the book is still the one that the page began with.
export const invented = () => !!begun && measures(response.state) === measures(begun.state);

const measures = (state) => JSON.stringify(Object.entries(state?.values ?? {}).filter(([key]) => key.startsWith('book')));

// empty leaves the book to be measured, and all else as it is.
export async function empty() {
  const kept = Object.entries(response.state.values).filter(([key, value]) => !key.startsWith('book') && key !== 'title' && begun.state.values[key] !== value);
  const { text: other } = await ask({ do: 'new' });
  await open(other);
  if (kept.length > 0) await set(...kept.map(([key, value]) => ({ key, value })));
}

function take(got) {
  response = { ...response, faults: [], error: undefined, opened: false, ...got };
  performance.mark('answered');
  for (const back of listeners) back(response);
}

// settled is true when all that was typed is answered.
export const settled = () => response.text !== undefined && changes.length === 0;
