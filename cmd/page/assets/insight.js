// What takes longer than a key press waits until a maker can see it, and until typing
// pauses.
import * as job from './job.js';

const pause = 250; // of typing, in milliseconds

// followed calls work whenever the job has changed and its place is near what is seen, and
// greys the place meanwhile: what is there is of an older state, and told says so where the
// job can't be made, as can tells by its verdict. work returns true where it is done. The
// function that it returns has it done again.
export function followed(place, told, work, can = (verdict) => !['refused', 'empty'].includes(verdict)) {
  let done = null; // the job file that the place shows
  let near = false;
  let timer = 0;
  const busy = (on) => place.setAttribute('aria-busy', String(on));
  const look = () => {
    clearTimeout(timer);
    const { answer } = job.now();
    if (!answer) return;
    const made = can(answer.verdict);
    place.classList.toggle('stale', done !== job.text() || !made);
    busy(made && done !== job.text());
    const says = made ? '' : done === null ? 'Nothing to show yet: see what is still to be filled in.' : 'Of the case as it was before: this one can\u2019t be made as it stands.';
    if (told.textContent !== says) told.textContent = says;
    if (made && near && done !== job.text()) timer = setTimeout(run, done === null ? 0 : pause);
  };
  const run = async () => {
    const text = job.text();
    if (await work(text)) {
      done = text;
      look();
    }
  };
  new IntersectionObserver((seen) => {
    near = seen.at(-1).isIntersecting;
    look();
  }, { rootMargin: '600px' }).observe(place);
  job.hear(look);
  return () => {
    done = '';
    look();
  };
}
