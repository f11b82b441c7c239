// Section 2: what the case is made of. Each material has a row: its thickness, how that is
// known, and what a maker calls it.
import { $, idOf, make } from './dom.js';
import { fieldsAt, row } from './fields.js';
import { begin, shopFold, shopRow } from './shop.js';

const place = $('materials');

place.append(make('p', { class: 'note' }, 'As your caliper says. Thin things are best measured several layers together: “4 layers 8.1” is divided for you.'));
const names = make('details', { class: 'fold group' }, make('summary', {}, 'what you call them'));
for (const section of await fieldsAt('materials')) {
  const group = make('div', { class: 'group' });
  const own = section.fields.some((f) => f.of !== section.name) ? section.name : '';
  if (own) group.append(make('h3', {}, own));
  for (const f of section.fields) {
    const named = `${own} ${f.of}: ${f.role}`.trim();
    if (f.role === 'name') names.append(row(f, { label: `${own} ${f.of}`.trim(), named }));
    else group.append(row(f, { label: f.role === 'thickness' ? f.of : `${f.of}, ${f.role}`, named }));
    if (f.role === 'thickness') group.append(shopRow(f.key, `${own} ${f.of}`.trim()));
  }
  place.append(group);
}
place.append(names, shopFold);
await begin();
