// The program in its workers. One answers while a maker types, where only the newest
// question counts; others do long work and can be stopped.

import { kept } from './kept.js';

performance.mark('parsed');
const program = document.getElementById('program');
let code = { packed: program.textContent, size: Number(program.dataset.size) }; // or { module }, once a worker has compiled it
const script = document.getElementById('worker').textContent;
const source = URL.createObjectURL(new Blob([script], { type: 'text/javascript' }));

// Helper is one worker, with the questions it has not answered.
class Helper {
  #worker = new Worker(source);
  #asked = new Map();
  #last = 0;
  stopped = false;

  constructor() {
    this.#worker.onmessage = ({ data }) => this.#hear(data);
    this.#worker.onerror = (event) => this.#fail(event.message || 'The program stopped.');
    this.#worker.postMessage(code);
  }

  ask(request, progress) {
    const id = ++this.#last;
    return new Promise((done, failed) => {
      this.#asked.set(id, { done, failed, progress });
      this.#worker.postMessage({ id, request: { shop: kept('shop', ''), ...request } });
    });
  }

  stop() {
    this.stopped = true;
    this.#worker.terminate();
    this.#fail('stopped');
  }

  #hear({ id, response, files, progress, failed, started, module }) {
    if (module) return code = { module };
    if (started) return performance.mark('program started', { detail: started });
    if (failed !== undefined) return this.#fail(failed);
    const asked = this.#asked.get(id);
    if (progress !== undefined) return asked?.progress?.(progress);
    this.#asked.delete(id);
    const data = files.values(); // of the files, then of the pages
    const held = (list) => (list ?? []).map((f) => ({ ...f, data: data.next().value }));
    asked.done({ ...response, files: held(response.files), pages: held(response.pages) });
  }

  #fail(why) {
    for (const { failed } of this.#asked.values()) failed(new Error(why));
    this.#asked.clear();
  }
}

const quick = new Helper();
let second; // one more, for what takes longer than a key press

// beside is the second worker: it starts when it is first needed.
const beside = () => (second?.stopped !== false ? second = new Helper() : second);

// Newest asks one of the two workers for the newest state only: while one question is being answered, the last
// of those that came since waits, and the others are dropped. An answer to a question
// that is no longer the newest is dropped too: ask then returns nothing.
export class Newest {
  #worker;
  #busy = false;
  #waiting = null;
  #number = 0;

  constructor(worker = () => quick) { this.#worker = worker; }

  async ask(request) {
    const number = ++this.#number;
    if (this.#busy) {
      this.#waiting?.(false);
      const mine = await new Promise((go) => { this.#waiting = go; });
      if (!mine) return undefined;
    }
    this.#busy = true;
    try {
      const response = await this.#worker().ask(request);
      return number === this.#number ? response : undefined;
    } finally {
      this.#busy = false;
      const next = this.#waiting;
      this.#waiting = null;
      next?.(true);
    }
  }
}

// ask asks the worker that answers while a maker types.
export const ask = (request) => quick.ask(request);

// aside asks the second worker.
export const aside = (request) => beside().ask(request);

// Later is a Newest for what takes longer: it asks the second worker.
export class Later extends Newest {
  constructor() { super(beside); }
}

// long does long work in a worker of its own. It returns a promise of the response, and
// stop, which ends it; progress is called with how much is done, from 0 to 1.
export function long(request, progress) {
  const helper = new Helper();
  const response = helper.ask(request, progress);
  return { response: response.finally(() => helper.stop()), stop: () => helper.stop() };
}
