// Asks the core. Text goes over, text comes back; a refusal is an answer like any other.
import createCore from './stopgap-core.js';
import { fetched } from './checked.js';
import { known } from './known_answers.js';

let core;

const instance = async imports => {
  const answer = await fetched('stopgap-core.wasm');
  // A host that does not name the module's kind is served as well: only the way through a stream asks for it.
  if (answer.headers.get('content-type') === 'application/wasm') return WebAssembly.instantiateStreaming(answer, imports);
  return WebAssembly.instantiate(await answer.arrayBuffer(), imports);
};
const made = () => new Promise((done, failed) => {
  createCore({ instantiateWasm: (imports, receive) => {
    instance(imports).then(({ instance: begun, module }) => receive(begun, module)).catch(failed);
    return {};
  } }).then(done, failed);
});

// What a page of the release does not start with: its core is missing or altered, or answers otherwise than it did when it was built.
export class Damaged extends Error {}

// Asked at every start, before anything else is: a core that does not give the answers it gave when the release was built gives none.
const answersAsBuilt = () => known.every(({ call, request, answer }) => core.ask(call, request) === answer);

export const load = async () => {
  try { core = await made(); } catch (problem) { throw new Damaged('The core did not arrive whole.', { cause: problem }); }
  let right = false;
  try { right = answersAsBuilt(); } catch (problem) { console.error(problem); }
  if (!right) { core = undefined; throw new Damaged('The core does not answer as it was built.'); }
};

export const ask = (call, request) => {
  const text = core.ask(call, request.toWellFormed());
  return { text, refused: core.isRefusal(text), ...JSON.parse(text) };
};
