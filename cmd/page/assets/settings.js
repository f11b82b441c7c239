// The settings of an output: what a flag is on the command line is a blank here. They are
// of the machine rather than of the case, and are kept for the next one.
import { make } from './dom.js';
import { faultLine } from './fields.js';
import { keep, kept } from './kept.js';

const last = ['effort', 'round', 'format']; // which matter least

// form returns the blanks of an output's settings; changed is called as they are typed in. Those
// without which nothing is made are apart, in first; the others are in fold.
export function form(output, changed) {
  let all;
  const name = 'settings ' + output.name;
  const typed = output.once ? {} : kept(name, {});
  const blanks = new Map();
  const rowOf = (s) => {
    const id = `${output.name}-${s.name}`;
    const faults = make('div', { class: 'faults', id: id + '-faults' });
    const described = { id, 'aria-describedby': `${id}-note ${id}-faults` };
    const blank = control(s, typed[s.name] ?? s.default, described, (value) => {
      if (value === s.default || value === '') delete typed[s.name];
      else typed[s.name] = value;
      if (!output.once) keep(name, Object.fromEntries(Object.entries(typed).filter(([key]) => !all.some((o) => o.once && o.name === key))));
      changed();
    });
    blanks.set('--' + s.name, { blank, faults });
    return make('div', { class: 'row setting', 'data-setting': s.name },
      s.kind === 'several' ? make('span', { id: id + '-label' }, s.label) : make('label', { for: id }, s.label), make('span', { class: 'answer' }, blank), make('p', { class: 'note', id: id + '-note' }, s.says), faults);
  };
  const first = make('div', { class: 'needed' });
  const fold = make('details', { class: 'fold' });
  if (output.once) fold.open = true;
  const show = (settings) => {
    if (JSON.stringify(all) === JSON.stringify(settings)) return;
    all = settings;
    blanks.clear();
    for (const name of Object.keys(typed)) if (!all.some((s) => s.name === name)) delete typed[name];
    first.replaceChildren(...all.filter((s) => s.needed).map(rowOf));
    fold.replaceChildren(make('summary', {}, output.once ? 'What you tell of it' : 'Settings'), ...all.filter((s) => !s.needed).sort((a, b) => last.indexOf(a.name) - last.indexOf(b.name)).map(rowOf));
  };
  show(output.settings ?? []);
  return {
    first, fold, show,
    typed: () => ({ ...typed }),
    // clear empties what is typed for this time only.
    clear() {
      for (const s of all) {
        if (!output.once && !s.once) continue;
        delete typed[s.name];
        const { blank } = blanks.get('--' + s.name);
        if (s.kind === 'several') for (const box of blank.querySelectorAll('input')) box.checked = false;
        else if (s.kind === 'yes') blank.checked = s.default === 'true';
        else blank.value = s.kind === 'choice' ? s.default : '';
      }
    },
    // tell puts faults at their blanks and returns those of no blank here.
    tell(all) {
      for (const [key, { blank, faults }] of blanks) {
        const mine = all.filter((f) => f.key === key);
        faults.replaceChildren(...mine.map((f) => faultLine(f)));
        blank.setAttribute('aria-invalid', String(mine.length > 0));
        if (mine.length > 0) for (let fold = blank.closest('details'); fold; fold = fold.parentElement.closest('details')) fold.open = true;
      }
      return all.filter((f) => !blanks.has(f.key));
    },
  };
}

function control(s, value, attributes, changed) {
  if (s.kind === 'yes') {
    const box = make('input', { type: 'checkbox', ...attributes, change: () => changed(String(box.checked)) });
    box.checked = value === 'true';
    return box;
  }
  if (s.kind === 'several') {
    const boxes = s.words.map((w) => make('input', { type: 'checkbox', value: w, change: () => changed(boxes.filter((b) => b.checked).map((b) => b.value).join(', ')) }));
    for (const b of boxes) b.checked = value.split(', ').includes(b.value);
    return make('span', { class: 'boxes', role: 'group', 'aria-labelledby': attributes.id + '-label', ...attributes }, ...boxes.map((b) => make('label', {}, b, ' ' + b.value)));
  }
  if (s.kind === 'choice') {
    const select = make('select', { ...attributes, change: () => changed(select.value) }, ...s.words.map((w) => make('option', { value: w }, w)));
    select.value = value;
    return select;
  }
  const input = make('input', { type: 'text', autocomplete: 'off', spellcheck: 'false', placeholder: s.default || s.takes || '', ...attributes, input: () => changed(input.value.trim()) });
  if (value !== s.default) input.value = value;
  return input;
}
