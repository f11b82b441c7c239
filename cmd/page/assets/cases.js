// The cases made on this machine, as the browser keeps them: each has an entry of its own,
// {id, text, source, untaken, title, kind, sizes, changed, saved, mark, gone}. Times are in
// milliseconds; mark is another each time that it is written.
import { forget, keep, kept, names } from './kept.js';

export const newMark = () => Date.now().toString(36) + Math.random().toString(36).slice(2, 8);

// caseOf returns the entry of a case, if there is one that can be read: what a browser keeps
// for a page may be changed by others.
export function caseOf(id) {
  const c = kept('case ' + id);
  if (typeof c?.text !== 'string' || !Array.isArray(c.untaken) || c.id !== id) return undefined;
  const words = (key) => (typeof c[key] === 'string' ? c[key] : '');
  const time = (key) => (Number.isFinite(c[key]) && Math.abs(c[key]) < 8e15 ? c[key] : 0);
  return {
    ...c, title: words('title'), kind: words('kind'), sizes: words('sizes'), mark: words('mark'), source: words('source') || undefined,
    changed: time('changed'), saved: time('saved'), gone: time('gone'), untaken: c.untaken.filter((u) => typeof u?.key === 'string'),
  };
}

export const keepCase = (c) => keep('case ' + c.id, c);

// cases returns all, those that were deleted apart, the one changed last first.
export function cases() {
  const all = names('case ').map((name) => caseOf(name.slice(5))).filter(Boolean).sort((a, b) => b.changed - a.changed);
  return { there: all.filter((c) => !c.gone), gone: all.filter((c) => c.gone) };
}

export const pictureOf = (id) => String(kept('picture ' + id, ''));
export function keepPicture(id, svg) {
  if (pictureOf(id) !== svg && !keep('picture ' + id, svg)) forget('picture ' + id); // the job itself matters more
}

// remove deletes a case so that it can be brought back until the next is deleted.
export function remove(id) {
  for (const c of cases().gone) {
    for (const of of ['case', 'picture', 'ticks', 'record']) forget(`${of} ${c.id}`);
  }
  keepCase({ ...caseOf(id), gone: Date.now(), mark: newMark() });
}

export const bringBack = (id) => keepCase({ ...caseOf(id), gone: undefined, mark: newMark() });
