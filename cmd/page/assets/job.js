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

// set makes changes to the job: {key, value}, or {key, gone: true}.
export async function set(...more) {
  performance.mark('changed');
  changes.push(...more);
  const asked = changes.length;
  let got;
  try {
    got = await answers.ask({ do: 'set', text: text(), changes: [...changes] });
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

// open puts the text of another job file in place of this one.
export async function open(other, source) {
  changes = [];
  const got = await answers.ask({ do: 'open', text: other, source });
  if (!got) return;
  refused.clear();
  take(got);
}

// start begins with the invented book.
export async function start() {
  take(await ask({ do: 'new', example: true }));
}

function take(got) {
  response = { ...response, faults: [], error: undefined, ...got };
  performance.mark('answered');
  for (const back of listeners) back(response);
}

// settled is true when all that was typed is answered.
export const settled = () => response.text !== undefined && changes.length === 0;
