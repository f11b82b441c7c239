// unpack reads what cmd/page/build packs into text: seven bits a character. One that
// can't stand in a page as it is (escaped) is in a character of two bytes, with the
// seven bits after it.
const escaped = [0, 10, 13, 38, 60, 62];

export function unpack(text, size) {
  const out = new Uint8Array(size);
  let held = 0, bits = 0, at = 0;
  for (let i = 0; at < size; i++) {
    const c = text.charCodeAt(i);
    if (c < 128) {
      held = (held << 7) | c;
      bits += 7;
    } else {
      held = (held << 14) | (escaped[(c - 128) >> 7] << 7) | (c & 127);
      bits += 14;
    }
    while (bits >= 8 && at < size) {
      bits -= 8;
      out[at++] = held >> bits;
    }
    held &= (1 << bits) - 1;
  }
  return out;
}
