// Section 2: what the case is made of. Each material has a row: its thickness, how that is
// known, and what a maker calls it.
import { $, idOf, make } from './dom.js';
import { fieldsAt, row } from './fields.js';

const place = $('materials');

place.append(make('p', { class: 'note' }, 'As your caliper says. A bare number is in the unit of the job; several layers can be measured together.'));
for (const section of await fieldsAt('materials')) {
  const of = Object.groupBy(section.fields, (f) => f.of);
  const group = make('div', { class: 'group' });
  if (section.fields.some((f) => f.of !== section.name)) group.append(make('h3', {}, section.name));
  for (const fields of Object.values(of)) {
    const by = Object.fromEntries(fields.map((f) => [f.role, f]));
    const line = row(by.thickness, { label: by.thickness.of });
    line.classList.add('material');
    for (const role of ['known', 'name']) {
      if (by[role]) line.append(row(by[role], { label: role === 'known' ? '' : 'called', named: `${by[role].of}: ${by[role].label}` }));
    }
    group.append(line);
  }
  place.append(group);
}
