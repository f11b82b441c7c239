// Files of the maker's: read, and dropped on the page.
const most = (1 << 20) + 1; // one byte more than is ever read: the program tells of the rest

// base64 returns the bytes of a file or a text, as far as they are looked at.
export async function base64(file) {
  const reader = new FileReader();
  const read = new Promise((done, failed) => { reader.onload = done; reader.onerror = () => failed(reader.error); });
  reader.readAsDataURL(file.slice(0, most));
  await read;
  return reader.result.slice(reader.result.indexOf(',') + 1);
}

// nameOf returns what messages call a file.
export const nameOf = (file) => file.name.slice(0, 100);

// isTable tells whether a file is a table, by its name.
export const isTable = (file) => /\.(csv|tsv|tab)$/i.test(file.name) || file.type === 'text/csv';

// onDrop calls back with the files that are dropped anywhere on the page.
export function onDrop(back) {
  const files = (event) => event.dataTransfer?.types.includes('Files');
  addEventListener('dragover', (event) => {
    if (!files(event)) return;
    event.preventDefault();
    document.body.classList.add('dropping');
  });
  addEventListener('dragleave', (event) => { if (!event.relatedTarget) document.body.classList.remove('dropping'); });
  addEventListener('drop', (event) => {
    document.body.classList.remove('dropping');
    if (!files(event)) return;
    event.preventDefault();
    back([...event.dataTransfer.files]);
  });
}

// address returns an address for a picture, SVG from the program or from storage: shown as
// an image it runs nothing and asks for nothing.
export const address = (svg) => URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));

// fileName makes a name for a file out of words.
export const fileName = (words, usual) => words.normalize('NFC').toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '').slice(0, 40).replace(/-+$/, '') || usual;
