// Asks the core. Text goes over, text comes back; a refusal is an answer like any other.
import createCore from './stopgap-core.js';

let core;

// The module lies beside the page, whichever file this script was joined into.
export const load = async () => { core = await createCore({ locateFile: name => name }); };

export const ask = (call, request) => {
  const text = core.ask(call, request.toWellFormed());
  return { text, refused: core.isRefusal(text), ...JSON.parse(text) };
};
