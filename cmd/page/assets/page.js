// The page: each section has a module of its own.
import { ask, aside } from './core.js';
import * as job from './job.js';
import './look.js';
import './top.js';
import './book.js';
import './materials.js';
import './make.js';
import { drawn } from './fit.js';
import './steps.js';
import './sheets.js';
import { begin } from './athand.js';
import { openLink } from './keep.js';
import './classroom.js';
import './offline.js';

// For who looks at the page from outside, such as its tests.
globalThis.forel = { ask, aside, set: job.set, text: job.text, settled: () => job.settled() && drawn() === job.text() };

await begin();
await openLink();
