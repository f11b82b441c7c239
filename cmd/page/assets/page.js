// The page: the text of the job file is its state; every blank is one of its keys.
import { Newest, long } from './core.js';
import { draw } from './drawing.js';
import { save } from './save.js';

const $ = (id) => document.getElementById(id);

performance.mark('parsed');
let text = '';            // the job file, as last answered
let changes = [];         // what was typed since
let unit = 'mm';
const answers = new Newest();
const pictures = new Newest();

// set changes keys of the job; the newest state is answered.
export async function set(...more) {
  performance.mark('changed');
  changes.push(...more);
  const asked = changes.length;
  let response;
  try {
    response = await answers.ask({ do: 'set', text, changes: [...changes] });
  } catch (err) {
    response = { error: err.message };
  }
  if (response) { // else there is a newer state
    changes = changes.slice(asked);
    show(response);
  }
}

function show(response) {
  if (response.text !== undefined) text = response.text;
  if (response.state) fill(response.state);
  tellFaults(response);
  const answer = response.answer;
  if (answer) {
    $('verdict').textContent = answer.says;
    $('verdict').dataset.verdict = answer.verdict;
    $('more').replaceChildren(...(answer.more ?? []).map((line) => paragraph(line)));
    $('patterns').disabled = answer.verdict === 'refused' || answer.verdict === 'empty';
    performance.mark('answered');
    drawCase(answer.verdict);
  }
}

let drawn = '';           // the job file that the pictures are of

async function drawCase(verdict) {
  const figure = $('case');
  if (verdict === 'refused' || verdict === 'empty') {
    figure.classList.add('stale');
    drawn = text; // there is nothing to draw
    return;
  }
  const of = text;
  const response = await pictures.ask({ do: 'pictures', text: of });
  if (!response?.pictures) return;
  drawn = of;
  figure.replaceChildren(draw(response.pictures.case));
  figure.classList.remove('stale');
  performance.mark('drawn');
}

// fill writes what the job file says into the blanks, but for the one being typed in.
function fill(state) {
  unit = state.unit;
  for (const blank of document.querySelectorAll('[data-key]')) {
    if (blank !== document.activeElement) blank.value = state.values[blank.dataset.key] ?? '';
  }
  $('unit').textContent = unit;
}

function tellFaults({ faults = [], error, answer }) {
  for (const place of document.querySelectorAll('.faults')) place.replaceChildren();
  for (const blank of document.querySelectorAll('[data-key]')) blank.removeAttribute('aria-invalid');
  const all = [...faults, ...(answer?.warnings ?? [])];
  if (error) all.push({ key: '', says: error });
  for (const fault of all) {
    const blank = document.querySelector(`[data-key="${CSS.escape(fault.key)}"]`);
    if (fault.empty) continue;
    if (blank && faults.includes(fault)) blank.setAttribute('aria-invalid', 'true');
    (blank ? $(blank.getAttribute('aria-describedby')) : $('faults')).append(faultLine(fault, !blank));
  }
}

function faultLine(fault, named) {
  const line = paragraph((named && fault.key ? fault.key + ': ' : '') + fault.says + (fault.fix ? '; ' + fault.fix : ''));
  line.className = 'fault';
  if (fault.mend) {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = fault.mend.label;
    button.addEventListener('click', () => set(...fault.mend.sets));
    line.append(' ', button);
  }
  return line;
}

function paragraph(words) {
  const p = document.createElement('p');
  p.textContent = words;
  return p;
}

for (const blank of document.querySelectorAll('[data-key]')) {
  blank.addEventListener('input', () => set({ key: blank.dataset.key, value: blank.value }));
}

$('patterns').addEventListener('click', async () => {
  $('patterns').disabled = true;
  try {
    const { faults = [], error, files } = await long({ do: 'make', name: 'templates', text }).response;
    const doc = files.find((f) => f.name === 'templates.pdf');
    if (doc) save(doc);
    else tellFaults({ faults, error });
  } finally {
    $('patterns').disabled = false;
  }
});


// For who looks at the page from outside, such as its tests.
globalThis.forel = { text: () => text, settled: () => text !== '' && changes.length === 0 && drawn === text };

const first = await answers.ask({ do: 'new', example: true });
show(first);
