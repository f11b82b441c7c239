// Section 5: the order of work as a strip of pictures of this very case, one step at a
// time beneath it, with what to check before the next.
import { Later } from './core.js';
import { $, button, make } from './dom.js';
import { draw } from './drawing.js';
import { followed } from './insight.js';
import { onTurn } from './kept.js';
import { tick, ticked } from './ticks.js';

const strip = make('div', { class: 'strip', role: 'tablist', 'aria-label': 'The steps in their order' });
const shown = make('div', { id: 'step', role: 'tabpanel', tabindex: '0' });
const count = make('p', { class: 'note', role: 'status' });
const back = button('← the step before', () => go(at - 1));
const old = make('p', { class: 'fault', role: 'status' });
const on = button('the next step →', () => go(at + 1));
$('steps').append(
  make('p', { class: 'note' }, 'Drawn from the sizes of this case. Go from step to step with the arrow keys, a swipe or a click, and tick what you have seen: ticks stay.'),
  old, strip, shown, make('p', { class: 'turn' }, back, on), count);

const worker = new Later();
let steps = [];   // as Go tells them
let figures = []; // by step: its pictures, once they are drawn
let at = 0;       // the step that is shown

followed($('steps'), old, async (text) => {
  const got = await worker.ask({ do: 'steps', text });
  if (!got?.steps) return got !== undefined && !!got.error;
  steps = got.steps;
  figures = [];
  at = Math.min(at, steps.length - 1);
  list();
  show();
  // The step that is shown comes first, then the others in their order.
  for (const n of [at, ...steps.keys()]) {
    if (figures[n]) continue;
    const drawn = await worker.ask({ do: 'figures', text, step: n });
    if (!drawn) return false; // the job has changed
    figures[n] = drawn.figures ?? [];
    picture(n);
    if (n === at) show();
  }
  return true;
});
onTurn(() => { list(); show(); });

// list shows the strip.
function list() {
  const had = strip.contains(document.activeElement);
  const pictures = [...strip.children].map((tab) => tab.querySelector('.small'));
  strip.replaceChildren(...steps.map((step, n) => make('button', {
    type: 'button', role: 'tab', id: `step-${n}`, 'aria-controls': 'step', click: () => go(n),
  }, pictures[n] ?? make('span', { class: 'small', 'aria-hidden': 'true' }), make('span', { class: 'name' }, `${n + 1} ${step.title}`), make('span', { class: 'ticks' }))));
  mark();
  if (had) strip.children[at]?.focus();
}

// picture puts the first picture of a step on the strip.
function picture(n) {
  const small = strip.children[n]?.querySelector('.small');
  if (small) small.replaceChildren(...figures[n].slice(0, 1).map(bare));
}

// bare returns a picture that says nothing: its step does.
function bare(svg) {
  const drawing = draw(svg);
  drawing.removeAttribute('role');
  for (const words of drawing.querySelectorAll('title, desc')) words.remove();
  return drawing;
}

// mark says on the strip which step is shown and what is ticked.
function mark() {
  let all = 0, done = 0;
  steps.forEach((step, n) => {
    const tab = strip.children[n];
    const checks = step.checks ?? [];
    const have = checks.filter((c) => ticked(wordsOf(c))).length;
    all += checks.length;
    done += have;
    tab.setAttribute('aria-selected', String(n === at));
    tab.tabIndex = n === at ? 0 : -1;
    tab.classList.toggle('done', checks.length > 0 && have === checks.length);
    tab.querySelector('.ticks').textContent = checks.length > 0 ? `${have} of ${checks.length} checked` : '';
  });
  count.textContent = all > 0 ? `${done} of ${all} checks of this case are ticked.` : '';
  back.disabled = at <= 0;
  on.disabled = at >= steps.length - 1;
}

const wordsOf = (check) => [check.name, check.when, ...(check.see ?? []), check.fails ?? ''].join('\n');

// go shows another step.
function go(n) {
  if (n < 0 || n >= steps.length) return;
  const had = strip.contains(document.activeElement);
  at = n;
  show();
  const tab = strip.children[at];
  strip.scrollTo({ left: tab.offsetLeft - strip.offsetLeft - (strip.clientWidth - tab.clientWidth) / 2 });
  if (had) tab.focus({ preventScroll: true });
}

function show() {
  const step = steps[at];
  if (!step) return;
  mark();
  shown.setAttribute('aria-labelledby', `step-${at}`);
  shown.replaceChildren(
    make('h3', {}, `${at + 1} of ${steps.length}: ${step.title}`),
    make('div', { class: 'figures' }, ...(figures[at] ?? []).map((f) => make('figure', {}, draw(f)))),
    make('div', { class: 'told' }, ...step.text.map((t) => make('p', {}, t)),
      ...(step.care ?? []).map((c) => make('p', { class: 'care' }, c)), ...checksOf(step)));
}

function checksOf(step) {
  return (step.checks ?? []).map((check, n) => {
    const words = wordsOf(check);
    const id = `check-${at}-${n}`;
    const box = make('input', { type: 'checkbox', id, 'aria-describedby': id + '-see', change: () => { tick(words, box.checked); mark(); } });
    box.checked = ticked(words);
    return make('div', { class: 'check' }, box, make('label', { for: id }, `Check: ${check.name}`, make('span', { class: 'note' }, ` ${check.when}`)),
      make('div', { id: id + '-see' }, make('ul', {}, ...(check.see ?? []).map((s) => make('li', {}, s))),
        ...(check.fails ? [make('p', { class: 'note' }, `If not: ${check.fails}`)] : []), ...foundOf(check)));
  });
}

// foundOf returns the table of what may be found at a check.
function foundOf({ found }) {
  if (!found) return [];
  const row = (kind, cells) => make('tr', {}, ...cells.map((cell) => make(kind, kind === 'th' ? { scope: 'col' } : {}, cell)));
  return [make('div', { class: 'found' }, make('table', {}, make('thead', {}, row('th', ['what is found', 'what it means', 'what to do'])), make('tbody', {}, ...found.map((cells) => row('td', cells)))))];
}

// Arrow keys, on the strip and on the step itself.
for (const place of [strip, shown]) {
  place.addEventListener('keydown', (event) => {
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: steps.length - 1 }[event.key];
    if (to === undefined || event.altKey || event.ctrlKey || event.metaKey || event.target.matches('input')) return;
    event.preventDefault();
    go(to);
  });
}

// A swipe goes on or back.
let from = null;
shown.addEventListener('touchstart', ({ touches }) => { from = touches.length === 1 ? touches[0] : null; }, { passive: true });
shown.addEventListener('touchend', ({ changedTouches: [to] }) => {
  if (!from) return;
  const [across, down] = [to.clientX - from.clientX, to.clientY - from.clientY];
  if (Math.abs(across) > 50 && Math.abs(across) > 2 * Math.abs(down)) go(at + (across < 0 ? 1 : -1));
  from = null;
}, { passive: true });
