// Ticks of what was checked, kept for each case. A tick belongs to the words of its check,
// figures and all: it is lost only where these change.
import { keep, kept, ofCase } from './kept.js';

const name = () => ofCase('ticks');

// ticked tells whether a text is ticked.
export const ticked = (text) => kept(name(), []).includes(digest(text));

// tick ticks a text, or takes its tick away.
export function tick(text, on) {
  const others = kept(name(), []).filter((d) => d !== digest(text));
  keep(name(), on ? [...others, digest(text)] : others);
}

// digest is a short name of a text: FNV-1a of 32 bits, and how long the text is.
export function digest(text) {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return (h >>> 0).toString(36) + '-' + text.length.toString(36);
}
