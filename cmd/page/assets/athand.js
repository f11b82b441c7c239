// The case at hand: kept as it is typed, and followed where another window changes it.
import { ask } from './core.js';
import { caseOf, cases, keepCase, keepPicture, newMark } from './cases.js';
import { base64 } from './files.js';
import { onDrawn } from './fit.js';
import * as job from './job.js';
import { atHand, becomes, elsewhere, keep, kept, turnTo } from './kept.js';
import { digest } from './ticks.js';

let source;  // what messages call the job file
let seen;    // the mark of the entry as this window knows it
let synced;  // what this window took from there or wrote there last; of a new case, its beginning
let turning; // another case is being opened
const hearers = [];

// onChange calls back when an entry of a case has changed, here or in another window, with
// what to say of it, if anything.
export const onChange = (back) => hearers.push(back);
const changed = (says) => { for (const back of hearers) back(says); };

// begin opens the case that was at hand last, else the invented book.
export async function begin() {
  const last = caseOf(ofWindow()) ?? caseOf(kept('at hand', ''));
  await (last && !last.gone ? turn(last, () => job.start(last)) : turn(undefined, () => job.start()));
}

// A window comes back to its own case, a new one to the last.
const ofWindow = (id) => {
  try {
    if (id !== undefined) sessionStorage.setItem('forel.at hand', id);
    return sessionStorage.getItem('forel.at hand');
  } catch { /* forbidden */ }
};

// turn makes a case the one at hand; opens puts its text into the page.
async function turn(c, opens = () => job.open(c.text, c.source)) {
  turning = true;
  turnTo(c?.id ?? '');
  source = c?.source;
  seen = c?.mark;
  synced = c && stateOf(c.text, c.untaken); // else the first answer is
  await opens().finally(() => { turning = false; });
  if (c?.untaken.length) {
    turning = true;
    for (const change of c.untaken) await job.set(change); // one by one: the job file may take some
    turning = false;
  }
  remember();
  write();
  changed();
}

const stateOf = (text, untaken) => JSON.stringify([text, untaken]);

function remember() {
  ofWindow(atHand());
  keep('at hand', atHand());
}

// turnToCase opens a case of the list.
export const turnToCase = (id) => turn(caseOf(id));

// turnToNew begins another case: with a job that is to be measured, or with a text.
export async function turnToNew(text) {
  text ??= (await ask({ do: 'new' })).text;
  await turn(undefined, () => job.open(text));
}

// receive opens a job file that comes from outside, as a case of its own. It returns what is
// wrong with one that can't be read, and then leaves all as it is.
export async function receive(blob, name) {
  const got = await ask({ do: 'open', data: await base64(blob), source: name });
  if (!got.state) return got.faults?.length ? got.faults : [{ says: got.error ?? 'this can’t be read' }];
  const id = newMark();
  keepCase({ ...entry(got, []), id, source: name });
  await turnToCase(id);
  return [];
}

// copy makes a copy of a case and opens it.
export async function copy(id) {
  const c = caseOf(id);
  const other = { ...c, id: newMark(), title: c.title, changed: Date.now(), mark: newMark(), saved: undefined };
  keepCase(other);
  await turnToCase(other.id);
}

// saved notes that the job at hand was saved as a file.
export function saved() {
  write(true);
  if (!atHand()) return;
  const c = { ...caseOf(atHand()), saved: Date.now(), savedText: digest(job.text()) };
  keepCase(c);
  changed();
}

// isSaved tells whether a case is as it was saved last.
export const isSaved = (c) => !!c.saved && c.savedText === digest(c.text) && c.untaken.length === 0;

// entry returns what is kept of a job.
function entry({ text, state }, untaken) {
  const [book] = state?.books ?? [];
  const sizes = (state?.dimensions ?? []).slice(0, 3).map((d) => book?.measures[d]?.find((r) => r.largest)?.typed);
  const measured = sizes.map((s) => !s ? '?' : /^[\d.,]+$/.test(s) ? `${s} ${state.unit}` : s).join(' × ');
  return {
    text, untaken, source, changed: Date.now(), mark: newMark(),
    title: (state?.values.title || book?.title || '').slice(0, 200), kind: state?.kind ?? '', sizes: sizes.some(Boolean) ? measured : 'still to be measured',
  };
}

// write keeps the case at hand where something was done to it here. One that another window
// has changed too becomes two.
function write(always) {
  if (turning || !job.text()) return;
  const state = stateOf(job.text(), job.untaken());
  if (state === synced && !always) return;
  let id = atHand();
  const before = id && caseOf(id);
  let says;
  if (before && before.mark !== seen && stateOf(before.text, before.untaken) !== state) {
    says = 'This case was changed in another window at the same time. What you typed here is now a case of its own.';
    id = '';
  }
  const c = { ...(id ? before : {}), ...entry(job.now(), job.untaken()), id: id || newMark(), gone: undefined };
  synced = state;
  seen = c.mark;
  keepCase(c);
  if (c.id !== atHand()) {
    becomes(c.id);
    remember();
  }
  changed(says);
}

job.onTyped(() => write());
job.hear(() => {
  synced ??= stateOf(job.text(), []);
  write();
});
onDrawn((svg) => {
  if (!atHand()) return;
  keepPicture(atHand(), svg);
  changed();
});

// follow shows what another window has made of the case at hand, when it is done typing. What
// is being typed here just now becomes a case of its own instead.
async function follow() {
  const c = atHand() && caseOf(atHand());
  if (!c || c.mark === seen || turning || !job.settled()) return;
  if (c.gone) {
    seen = c.mark;
    changed('This case was deleted in another window. Typing here brings it back.');
    return;
  }
  if (c.untaken.length > 0) return;
  if (stateOf(c.text, []) === synced) {
    seen = c.mark;
    return;
  }
  if (!document.hasFocus()) document.activeElement?.blur(); // so that its blank takes what was typed
  await turn(c);
  changed('Changed in another window; you see it here as it is there.');
  follow();
}

elsewhere((name) => {
  if (name === 'case ' + atHand() || name === '') follow();
  changed();
});
for (const event of ['visibilitychange', 'pageshow']) addEventListener(event, () => { if (!document.hidden) follow(); });

// left opens what is at hand when a case was deleted.
export async function left() {
  const [next] = cases().there;
  if (next) await turn(next);
  else await turnToNew();
}
