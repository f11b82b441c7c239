// What a browser keeps for the page. Storage may be full or forbidden: then a value is
// kept as long as the page is open.
const held = new Map();
let of = ''; // the case at hand
const turned = [];

// kept returns what is kept under a name, else what is usual.
export function kept(name, usual) {
  try {
    const text = localStorage.getItem('forel.' + name);
    if (text !== null) return JSON.parse(text);
  } catch { /* forbidden, or not ours */ }
  return held.get(name) ?? usual;
}

// keep keeps a value under a name.
export function keep(name, value) {
  held.set(name, value);
  try {
    localStorage.setItem('forel.' + name, JSON.stringify(value));
  } catch { /* full or forbidden */ }
}

// ofCase is a name of what belongs to the case at hand alone.
export const ofCase = (name) => `${name} ${of}`;

// turnTo makes another case the one at hand; onTurn hears of it.
export function turnTo(id) {
  of = id;
  for (const back of turned) back();
}

export const onTurn = (back) => turned.push(back);
