// The head of the worksheet: what the job is called, and the unit of bare numbers.
import { $, idOf, make } from './dom.js';
import { add, field, row } from './fields.js';
import * as job from './job.js';

const title = row(await field('title'), { label: 'called' });
title.classList.add('title');
$('named').append(title);

// A change of unit changes figures and usual values, never the book: a length that is
// typed without a unit gets the one it had.
const units = await field('units');
const faults = make('div', { class: 'faults' });
const told = make('span', { class: 'note', role: 'status' });
const radios = units.words.map((w) => make('input', {
  type: 'radio', name: 'units', value: w, id: idOf('units ' + w),
  change: async () => {
    await job.set({ key: 'units', value: w });
    told.textContent = `Lengths typed keep their unit; a bare number is now in ${w}, and what you left out is round in ${w}.`;
  },
}));
const element = make('fieldset', {}, make('legend', {}, units.what),
  ...radios.map((r) => make('label', { for: r.id }, r, ' ' + r.value)), told, faults);
job.hear(() => { told.textContent = ''; });
add('units', {
  element, field: units, faults,
  fill: (typed) => { for (const r of radios) r.checked = r.value === (typed || units.default); },
});
$('ways').prepend(element);
