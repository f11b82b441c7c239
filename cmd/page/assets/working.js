// Long work that is begun by a button, shows how much is done, and can be stopped.
import { button, make } from './dom.js';
import * as job from './job.js';

// working returns {elements, look, status}. start begins the work and returns what long does;
// done takes its response and returns what to say. look looks whether the job can be made.
export function working(words, id, start, done, ready = () => !['refused', 'empty', undefined].includes(job.now().answer?.verdict)) {
  const status = make('p', { class: 'note', role: 'status', id: id + '-told' });
  const bar = make('progress', { max: '1', hidden: true, 'aria-label': `${words}: how much is done` });
  let work = null;
  const begin = button(words, async () => {
    run(true);
    status.textContent = 'Working …';
    try {
      work = start((fraction) => { bar.value = fraction; });
      status.textContent = done(await work.response) ?? '';
    } catch (err) {
      status.textContent = err.message === 'stopped' ? 'Stopped.' : err.message;
    }
    run(false);
    look();
  }, { id });
  const stop = button('stop', () => work?.stop(), { hidden: true, id: id + '-stop' });
  const run = (on) => {
    const focused = [begin, stop].includes(document.activeElement);
    begin.hidden = on;
    stop.hidden = bar.hidden = !on;
    bar.removeAttribute('value');
    if (focused) (on ? stop : begin).focus();
  };
  const look = () => { begin.disabled = !ready(); };
  job.hear(look);
  return { elements: [make('p', { class: 'act' }, begin, bar, stop), status], look, status };
}
