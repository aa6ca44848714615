#!/usr/bin/env node
// The built module from a shell: node wasm/ask.mjs CALL [--lines]. Twin of stopgap.cpp, byte for byte.
import { readFileSync } from 'node:fs';
import { load } from './core.mjs';

const help = readFileSync(new URL('help.txt', import.meta.url), 'utf8');
const largestRequest = 5 * 1024 * 1024;   // as in stopgap.cpp, and for the same reason
const newline = 10;

const leave = (code, stream, text) => { stream.write(text); process.exitCode = code; };

// Yields the bytes of each request. They are never decoded here: what is not UTF-8 is for the core to refuse.
async function* requests(input, lines) {
  let kept = [], size = 0, any = false;
  const keep = part => {
    const room = largestRequest + 1 - size;
    if (room > 0 && part.length) kept.push(part.subarray(0, room));
    size += part.length;
  };
  const take = () => { const whole = Buffer.concat(kept); kept = []; size = 0; any = false; return whole; };
  for await (const chunk of input) {
    let from = 0;
    if (lines)
      for (let at; (at = chunk.indexOf(newline, from)) >= 0; from = at + 1) { keep(chunk.subarray(from, at)); yield take(); }
    if (from < chunk.length) { any = true; keep(chunk.subarray(from)); }
  }
  if (any || !lines) yield take();
}

const main = async words => {
  const [call = '', option] = words;
  if (words.length === 1 && (call === '--help' || call === '-h')) return leave(0, process.stdout, help);
  const lines = option === '--lines';
  let core;
  try { core = await load(); } catch (problem) { return leave(2, process.stderr, `${problem.message}\n`); }
  if (!core.isCall(call) || words.length > 2 || (words.length === 2 && !lines)) return leave(2, process.stderr, help);
  // A reader that went away: an answer that could not be printed was not given.
  process.stdout.on('error', () => process.exit(2));
  process.exitCode = 0;
  for await (const request of requests(process.stdin, lines)) {
    const answer = core.ask(call, request);
    if (core.isRefusal(answer)) process.exitCode = 1;
    if (!process.stdout.write(`${answer}\n`)) await new Promise(ready => process.stdout.once('drain', ready));
  }
};

await main(process.argv.slice(2));
