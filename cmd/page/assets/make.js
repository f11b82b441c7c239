// Section 3: what is made. What the rest depends on is shown, all else folded away under
// the heading of its table.
import { $, make } from './dom.js';
import { fieldsAt, row } from './fields.js';

const place = $('make');
const sections = await fieldsAt('make');

for (const section of sections) {
  for (const f of section.fields.filter((f) => f.open)) {
    place.append(row(f, { label: section.name ? `${section.name}, ${f.label}` : f.label }));
  }
}
const folds = make('div', { class: 'folds' }, make('h3', {}, 'All else, at its usual value until you change it'));
for (const section of sections) {
  const rest = section.fields.filter((f) => !f.open);
  if (rest.length === 0) continue;
  folds.append(make('details', { class: 'fold group', 'aria-label': section.name || 'the job' }, make('summary', {}, section.name || 'the job'),
    make('p', { class: 'note' }, section.says), ...rest.map((f) => row(f))));
}
place.append(folds);
