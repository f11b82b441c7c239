// unpack reads what cmd/page/build packs into text: fifteen bits a character, from U+0100.
export function unpack(text, size) {
  const out = new Uint8Array(size);
  let held = 0, bits = 0, at = 0;
  for (let i = 0; at < size; i++) {
    held = (held << 15) | (text.charCodeAt(i) - 256);
    bits += 15;
    while (bits >= 8 && at < size) {
      bits -= 8;
      out[at++] = held >> bits;
    }
    held &= (1 << bits) - 1;
  }
  return out;
}
