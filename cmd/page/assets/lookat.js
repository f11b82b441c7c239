// A page, looked at: as large as the window, or as large as it prints.
import { button, make } from './dom.js';
import { draw, seen } from './drawing.js';
import { keep, kept } from './kept.js';

const known = 100; // millimetres, of the line that a screen is measured by

const heading = make('h2', { id: 'look-head' });
const sheet = make('div', { class: 'sheet', tabindex: '0', role: 'group', 'aria-labelledby': 'look-head' });
const truly = make('input', { type: 'checkbox', id: 'truly', change: size });
const line = make('div', { class: 'line' });
const measures = make('input', { type: 'text', id: 'measures', inputmode: 'decimal', 'aria-describedby': 'measures-note', input: measured });
const scale = make('div', { class: 'scale' }, line, make('label', { for: 'measures' }, 'this line measures'), ' ', measures, ' mm',
  make('p', { class: 'note', id: 'measures-note' }, `Screens differ. Hold a ruler to the line: it should be ${known} mm long. If it is not, type what it measures. Paper is what you cut from: measure the rulers on it.`));
const before = button('← before', () => turn(-1));
const after = button('next →', () => turn(1));
const dialog = make('dialog', { class: 'look', 'aria-labelledby': 'look-head' },
  make('p', { class: 'ways' }, before, after, make('span', {}, truly, ' ', make('label', { for: 'truly' }, 'true size')), button('close', () => dialog.close())),
  heading, scale, sheet);
document.body.append(dialog);
measures.value = kept('screen', known);

let pages = [];
let at = 0;

// lookAt opens the nth of some drawings: {name, data}.
export function lookAt(all, n) {
  pages = all;
  at = n;
  show();
  dialog.showModal();
  sheet.focus();
}

function turn(by) {
  if (!pages[at + by]) return;
  at += by;
  show();
}

function show() {
  heading.textContent = pages[at].name;
  sheet.replaceChildren(draw(seen(pages[at].data)));
  before.disabled = at === 0;
  after.disabled = at === pages.length - 1;
  size();
}

// shown returns how many of the screen's millimetres are a true one.
const shown = () => known / kept('screen', known);

function size() {
  const drawing = sheet.firstElementChild;
  const { width } = drawing.viewBox.baseVal; // in millimetres
  drawing.style.width = truly.checked ? `${width * shown()}mm` : '';
  sheet.classList.toggle('true', truly.checked);
  scale.hidden = !truly.checked;
  line.style.width = `${known * shown()}mm`;
}

// measured takes how long the line is: with what it is drawn at, that tells the screen.
function measured() {
  const length = Number(measures.value.replace(',', '.'));
  const wrong = !(length >= 30 && length <= 300);
  measures.setAttribute('aria-invalid', String(wrong));
  if (!wrong) keep('screen', length);
}
measures.addEventListener('change', size); // not while it is typed: the line would move

dialog.addEventListener('keydown', (event) => {
  if (event.target === measures) return;
  const by = { PageDown: 1, ArrowRight: 1, PageUp: -1, ArrowLeft: -1 }[event.key];
  if (!by || (truly.checked && event.key.startsWith('Arrow'))) return;
  event.preventDefault();
  turn(by);
});
