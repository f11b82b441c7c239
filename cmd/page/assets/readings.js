// A blank that takes several readings, one after the other; the largest counts.
import { make } from './dom.js';
import * as job from './job.js';

// readings returns such a blank and how to fill it. Each reading is a line of its own; one
// empty line more waits for another.
export function readings(key, required, { id, 'aria-label': named, 'aria-describedby': described }) {
  const element = make('span', { class: 'readings', role: 'group', 'aria-label': named });
  const lines = () => [...element.querySelectorAll('input')];
  const filled = () => lines().filter((l) => l.value.trim() !== '');
  const value = () => filled().map((l) => l.value.trim()).join('; ');

  function line(typed) {
    const input = make('input', { type: 'text', autocomplete: 'off', spellcheck: 'false', 'aria-describedby': described, enterkeyhint: 'next' });
    input.value = typed;
    return input;
  }

  // tidy leaves one empty line, the last, and names all.
  function tidy(keep) {
    for (const l of lines().slice(0, -1)) if (l.value.trim() === '' && l !== keep) l.remove();
    if (lines().length === 0 || lines().at(-1).value.trim() !== '') element.append(line(''));
    lines().forEach((l, i) => {
      if (i === 0) l.id = id;
      l.size = Math.max(5, l.value.length);
      const spare = i > 0 && l.value.trim() === '';
      l.placeholder = spare ? 'another' : '';
      l.setAttribute('aria-label', (spare ? 'another reading: ' : '') + named + (l.classList.contains('largest') ? ', the largest: it counts' : ''));
    });
  }

  function mark(state) {
    const all = read(state, key);
    const mine = filled();
    mine.forEach((l, i) => {
      l.classList.toggle('largest', all.length > 1 && all.length === mine.length && !!all[i].largest);
      l.classList.toggle('no-length', all.length === mine.length && all[i].mm === 0);
    });
  }

  element.addEventListener('input', (event) => {
    tidy(event.target);
    job.set(value() === '' && !required ? { key, gone: true } : { key, value: value() });
  });
  element.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    const next = lines()[lines().indexOf(event.target) + 1] ?? after(element);
    next?.focus();
    next?.select?.(); // as the tab key does
  });
  element.addEventListener('focusout', (event) => {
    if (!element.contains(event.relatedTarget)) tidy();
  });

  return {
    element,
    fill(typed, state) {
      if (!element.contains(document.activeElement) && (value() !== typed || lines().length === 0)) {
        element.replaceChildren(...typed.split(';').map((t) => t.trim()).filter(Boolean).map(line));
      }
      if (state) mark(state);
      tidy(document.activeElement);
    },
  };
}

// read returns the readings of a key.
function read(state, key) {
  const [of, dimension] = key.split('.');
  return state.books.find((b) => b.key === of)?.measures[dimension]
    ?? (state.values[key] ?? '').split(';').filter((t) => t.trim()).map((typed) => ({ typed, mm: NaN }));
}

// after returns the first blank of the page behind an element.
function after(element) {
  return [...document.querySelectorAll('main input, main select, main button')].find((e) => e.checkVisibility() && element.compareDocumentPosition(e) & Node.DOCUMENT_POSITION_FOLLOWING && !element.contains(e));
}
