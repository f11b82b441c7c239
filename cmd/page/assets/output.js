// One output of a job: its settings, what is made, and the files to save.
import { Later, aside, long } from './core.js';
import { button, make } from './dom.js';
import { seen } from './drawing.js';
import { faultLine, mend, nameOf } from './fields.js';
import { followed } from './insight.js';
import { beside, record } from './records.js';
import * as job from './job.js';
import { lookAt } from './lookat.js';
import { save } from './save.js';
import { form } from './settings.js';
import { adopt, onShop, setShop } from './shop.js';
import { apart, besides, onTogether } from './together.js';
import { working } from './working.js';

// outputOf returns what shows an output: {element, ready}. ready returns a promise of what
// is made of the job as it is. extra stands before the settings.
export function outputOf(output, ...extra) {
  const worker = new Later();
  const made = { of: null, response: null }; // what was made last, and of which job
  const place = make('div', { class: 'made' });
  const told = make('div', { class: 'faults', role: 'status' });
  const old = make('p', { class: 'fault', role: 'status' });
  const settings = form(output, () => { made.of = null; again(); });
  const request = (text) => ({ do: 'make', name: output.name, text, flags: settings.typed(), pages: true, ...(output.place === 'keep' ? beside() : {}), ...(output.several ? { others: besides() } : {}) });
  const element = make('div', { class: 'output', id: 'output-' + output.name, role: 'group', 'aria-label': output.title },
    make('p', { class: 'note' }, output.says), ...(output.several ? [shared()] : []), ...extra, settings.first, settings.fold);
  if (output.measures) follow(output, settings);

  const take = (text, response) => {
    const faults = settings.tell(response.faults ?? []);
    told.replaceChildren(...faults.map((f) => faultLine({ ...f, says: (f.key ? f.key + ': ' : '') + f.says })),
      ...(response.warnings ?? []).map((f) => faultLine(f, 'look')), ...(response.error ? [make('p', { class: 'fault' }, response.error)] : []));
    const none = (response.files ?? []).length === 0;
    place.classList.toggle('amiss', none);
    if (none) return;
    if (response.shop !== undefined) setShop(response.shop);
    if (response.record !== undefined) record(response.record);
    if (response.shop !== undefined || response.record !== undefined) settings.clear();
    Object.assign(made, { of: text, response });
    place.replaceChildren(...advised(response.advised, told), ...shown(output, response));
  };

  // One job is made once, whoever asks for it: a second question would drop the first.
  let making = {};
  const ask = (text) => {
    const asked = JSON.stringify(request(text));
    if (making.asked !== asked) {
      const mine = making = { asked };
      mine.response = worker.ask(request(text)).catch((err) => ({ error: err.message }))
        .finally(() => { if (making === mine) making = {}; });
    }
    return making.response;
  };

  let again = () => {};
  if (output.slow) {
    const work = onRequest(output, request, take, made, place, old);
    element.append(...work.elements);
    again = work.look;
  }
  element.append(told, old, place);
  if (!output.slow) {
    again = followed(place, old, async (text) => {
      const response = await ask(text);
      if (response) take(text, response);
      return !!response;
    }, output.early ? (verdict) => verdict !== 'empty' : undefined);
  }
  const renew = () => {
    made.of = null;
    again();
  };
  onShop(renew);
  if (output.several) onTogether(renew);
  job.hear(({ opened }) => { if (opened && output.once) settings.clear(); });
  if (output.care) element.append(make('p', { class: 'care' }, output.care));

  // ready makes it now where it is not made yet.
  const ready = async () => {
    const text = job.text();
    if (made.of !== text) {
      const response = await ask(text);
      if (response) take(text, response);
    }
    return made.of === text ? made.response : undefined;
  };
  return { element, ready };
}

// follow keeps the blanks those of the case: what is measured of it.
function follow(output, settings) {
  const told = make('p', { class: 'note' });
  settings.fold.before(told);
  followed(settings.fold, told, async (text) => {
    const { outputs } = await aside({ do: 'settings', name: output.name, text });
    if (outputs) settings.show(outputs[0].settings);
    return true;
  });
}

// shared says which other cases are made together with this one.
function shared() {
  const line = make('p', { class: 'note' });
  const say = () => {
    const names = besides().map(({ name }) => `“${name || 'no name yet'}”`);
    line.hidden = names.length === 0;
    line.replaceChildren(`This case together with ${names.join(', ')}, as ticked in your list of cases. `, button('this case alone', apart));
  };
  onTogether(say);
  say();
  return line;
}

// onRequest returns the button by which slow work is begun, with its progress and a way to
// stop it, and look, which tells whether what is there is of the job as it is.
function onRequest(output, request, take, made, place, old) {
  let text;
  const { elements } = working(output.begin ?? 'Lay the pieces out', 'begin-' + output.name, (progress) => {
    text = job.text();
    return long(request(text), progress);
  }, (response) => {
    take(text, response);
    look();
    return response.files?.length ? 'Done: see below.' : 'Not done: see what is wrong.';
  });
  const look = () => {
    const stale = made.response !== null && made.of !== job.text();
    place.classList.toggle('stale', stale);
    old.textContent = stale ? 'The job or its settings have changed since: do it again.' : '';
  };
  job.hear(look);
  return { elements, look };
}

// shown returns what was made: what to know of it, the report, its pages and drawings, and
// the files.
function shown(output, { notes = [], report = '', pages = [], files = [] }) {
  const drawings = files.filter((f) => f.type === 'image/svg+xml');
  const out = notes.map((n) => make('p', {}, n));
  if (report) out.push(make('pre', { tabindex: '0', role: 'region', 'aria-label': output.title }, output.early ? unwrapped(report) : report));
  if (pages.length > 0) out.push(thumbs(pages, 'pages'));
  if (drawings.length > 0) {
    out.push(make('details', { class: 'fold', ...(output.slow ? { open: true } : {}) },
      make('summary', {}, drawings.length === 1 ? 'A drawing' : `${drawings.length} drawings, each a file of its own`), thumbs(drawings, 'drawings')));
  }
  out.push(make('p', { class: 'files' }, 'Save ', ...files.filter((f) => !drawings.includes(f)).flatMap((f) => [button(f.name, () => save(f), { 'aria-label': `save ${f.name}` }), ' '])));
  return out;
}

// advised returns what to take over of what is advised, each with a button; told hears what
// was done.
function advised(all = [], told) {
  const line = (m) => make('li', {}, `${m.label}: ${m.sets.map(({ key, value }) => `${nameOf(key)} ${value}`).join('; ')}. `,
    m.habit ? button('make it a habit of my shop', async () => told.replaceChildren(...await adopt(m.sets)))
      : button('fill it in', () => mend(m), { 'aria-label': `${m.label}: fill it in` }));
  return all.length === 0 ? [] : [make('ul', { class: 'advised' }, ...all.map(line))];
}

// thumbs returns small pictures of pages or drawings; each opens larger.
function thumbs(all, kind) {
  return make('ul', { class: 'thumbs ' + kind }, ...all.map((f, n) => {
    const picture = make('img', { alt: '', loading: 'lazy', src: addressOf(f) });
    const open = button('', () => lookAt(all, n), { class: 'thumb', 'aria-label': `look at ${f.name}` });
    open.append(picture, make('span', {}, short(f.name)));
    const item = make('li', {}, open);
    if (kind === 'drawings') item.append(button('save', () => save(f), { class: 'keeps', 'aria-label': `save ${f.name}` }));
    return item;
  }));
}

// unwrapped joins the lines of each paragraph, for a page of any width; the first is not
// indented.
const unwrapped = (report) => report.replace(/^.+(\n.+)+/, (first) => first.replaceAll('\n', ' ')).replace(/\n +(?!- )(?=\S)/g, ' ');

const short = (name) => name.replace(/ – .*/, '').replace(/\.svg$/, '').replaceAll('-', ' ');

function addressOf(f) {
  const address = URL.createObjectURL(new Blob([seen(f.data)], { type: f.type }));
  gone.register(f, address);
  return address;
}

const gone = new FinalizationRegistry((address) => URL.revokeObjectURL(address));
