// The worker: unpacks the program, starts it, and hands it one request at a time.
// Go's own support script (globalThis.Go) stands before this one.
import { unpack } from './unpack.js';

const coder = new TextEncoder();
const reader = new TextDecoder();

const started = new Promise((done) => { globalThis.ready = done; });

// compile returns the program compiled, and lets the page have it for its other workers.
async function compile({ packed, size }, lap) {
  const bytes = unpack(packed, size);
  lap();
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  const source = new Response(stream, { headers: { 'Content-Type': 'application/wasm' } });
  const module = await WebAssembly.compileStreaming(source);
  postMessage({ module });
  return module;
}

async function start(program) {
  const times = [performance.now()];
  const lap = () => times.push(performance.now());
  if (program.module) lap(); // nothing to unpack
  const module = program.module ?? await compile(program, lap);
  const go = new Go();
  const instance = await WebAssembly.instantiate(module, go.importObject);
  lap();
  go.run(instance);
  await started;
  lap();
  const [unpacked, compiled, ready] = times.slice(1).map((t, i) => t - times[i]);
  postMessage({ started: { unpacked, compiled, ready } });
}

onmessage = async ({ data }) => {
  if (data.module || data.packed !== undefined) {
    start(data).catch((err) => postMessage({ failed: String(err) }));
    return;
  }
  const ask = await started;
  const { id, request } = data;
  try {
    const [response, ...files] = ask(coder.encode(JSON.stringify(request)), (progress) => postMessage({ id, progress }));
    postMessage({ id, response: JSON.parse(reader.decode(response)), files }, files.map((f) => f.buffer));
  } catch (err) {
    postMessage({ id, response: { error: String(err) }, files: [] });
  }
};
