// The worker: unpacks the program, starts it, and hands it one request at a time.
// Go's own support script (globalThis.Go) stands before this one.
import { unpack } from './unpack.js';

const coder = new TextEncoder();
const reader = new TextDecoder();

const started = new Promise((done) => { globalThis.ready = done; });

async function start(packed, size) {
  const times = [performance.now()];
  const lap = () => times.push(performance.now());
  const bytes = unpack(packed, size);
  lap();
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  const go = new Go();
  const source = new Response(stream, { headers: { 'Content-Type': 'application/wasm' } });
  const { instance } = await WebAssembly.instantiateStreaming(source, go.importObject);
  lap();
  go.run(instance);
  await started;
  lap();
  const [unpacked, compiled, ready] = times.slice(1).map((t, i) => t - times[i]);
  postMessage({ started: { unpacked, compiled, ready } });
}

onmessage = async ({ data }) => {
  if (data.packed !== undefined) {
    start(data.packed, data.size).catch((err) => postMessage({ failed: String(err) }));
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
