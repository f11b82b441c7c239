// The button that saves the patterns.
import { long } from './core.js';
import * as job from './job.js';
import { save } from './save.js';

const button = document.getElementById('patterns');
let busy = false;

button.addEventListener('click', async () => {
  busy = button.disabled = true;
  try {
    const { files } = await long({ do: 'make', name: 'templates', text: job.text() }).response;
    const doc = files.find((f) => f.name === 'templates.pdf');
    if (doc) save(doc);
  } finally {
    busy = button.disabled = false;
  }
});

job.hear(({ answer }) => {
  button.disabled = busy || !answer || ['refused', 'empty'].includes(answer.verdict);
});
