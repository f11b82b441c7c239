// What a browser keeps for the page. Storage may be full or forbidden: then a value is
// kept as long as the page is open.
const mark = 'forel.';
const held = new Map(); // what the browser would not keep
const turned = [];
const failed = [];
let of = ''; // the case at hand

// kept returns what is kept under a name, else what is usual.
export function kept(name, usual) {
  if (held.has(name)) return held.get(name);
  try {
    const text = localStorage.getItem(mark + name);
    if (text !== null) return JSON.parse(text);
  } catch { /* forbidden, or not ours */ }
  return usual;
}

// keep keeps a value under a name, and returns whether the browser keeps it too.
export function keep(name, value) {
  const lasted = lasts();
  try {
    localStorage.setItem(mark + name, JSON.stringify(value));
    held.delete(name);
  } catch {
    held.set(name, value);
  }
  tellIf(lasted);
  return !held.has(name);
}

// forget ends what is kept under a name.
export function forget(name) {
  const lasted = lasts();
  held.delete(name);
  try {
    localStorage.removeItem(mark + name);
  } catch { /* then there is nothing either */ }
  tellIf(lasted);
}

// names returns the names that begin so.
export function names(start) {
  const all = new Set([...held.keys()].filter((name) => name.startsWith(start)));
  try {
    for (let i = 0; i < localStorage.length; i++) {
      const name = localStorage.key(i);
      if (name.startsWith(mark + start)) all.add(name.slice(mark.length));
    }
  } catch { /* forbidden */ }
  return [...all];
}

// lasts tells whether the browser keeps all there is; onLasts hears when that changes.
export const lasts = () => held.size === 0;
export const onLasts = (back) => failed.push(back);

function tellIf(lasted) {
  if (lasts() !== lasted) for (const back of failed) back();
}

// elsewhere hears of what another window of the page keeps, by its name.
export function elsewhere(back) {
  addEventListener('storage', ({ key }) => {
    if (key === null) back('');
    else if (key.startsWith(mark)) back(key.slice(mark.length));
  });
}

// ofCase is a name of what belongs to the case at hand alone.
export const ofCase = (name) => `${name} ${of}`;

// atHand is the case at hand; turnTo makes another one that; onTurn hears of it.
export const atHand = () => of;
export function turnTo(id) {
  of = id;
  for (const back of turned) back();
}

// becomes gives the case at hand another id: what belongs to it alone goes along.
export function becomes(id) {
  const end = ' ' + of;
  for (const name of names('').filter((n) => n.endsWith(end))) {
    keep(name.slice(0, -end.length) + ' ' + id, kept(name));
    if (of === '') forget(name); // else another window may have that case
  }
  turnTo(id);
}

export const onTurn = (back) => turned.push(back);
