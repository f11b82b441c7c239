// A link that holds a job in the part after "#", which no server sees: deflated (RFC 1951),
// then in the letters of base64url (RFC 4648).
const start = '#job=';
const mostLetters = 30_000; // of a link
const mostText = 1 << 20;   // of the job in it, as of a job file

// linkOf returns the part of a link that holds a job; nothing where it would be too long.
export async function linkOf(text) {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw'));
  const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
  const letters = btoa(Array.from(bytes, (b) => String.fromCharCode(b)).join('')).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
  return letters.length > mostLetters ? undefined : start + letters;
}

// holds tells whether a part after "#" is meant to hold a job.
export const holds = (hash) => hash.startsWith(start);

// unlinked returns the bytes of the job in a link. It fails where there is none.
export async function unlinked(hash) {
  const letters = hash.slice(start.length);
  if (letters.length > mostLetters) throw new Error('The link is longer than the links that this page makes.');
  const bytes = Uint8Array.from(atob(letters.replaceAll('-', '+').replaceAll('_', '/')), (c) => c.charCodeAt(0));
  const reader = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader();
  const parts = [];
  let size = 0;
  for (let part; !(part = await reader.read()).done; parts.push(part.value)) {
    if ((size += part.value.length) > mostText) {
      reader.cancel();
      throw new Error('What the link holds is too long for a job file.');
    }
  }
  return new Blob(parts);
}
