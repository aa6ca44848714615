// Loads the built module in node: for ask.mjs, for putting the site together, and for tests.
import { existsSync, readFileSync } from 'node:fs';

export const builtFolder = new URL('../build/wasm/wasm/', import.meta.url);

export const load = async (folder = builtFolder) => {
  const glue = new URL('stopgap-core.js', folder);
  if (!existsSync(glue)) throw new Error('The module is not built yet. Run: bash pwa/run --build-only');
  const { default: createCore } = await import(glue.href);
  return createCore({ wasmBinary: readFileSync(new URL('stopgap-core.wasm', folder)) });
};
