// Asks the core. Text goes over, text comes back; a refusal is an answer like any other.
import createCore from './stopgap-core.js';

let core;

export const load = async () => { core = await createCore(); };

export const ask = (call, request) => {
  const text = core.ask(call, request.toWellFormed());
  return { text, refused: core.isRefusal(text), ...JSON.parse(text) };
};
