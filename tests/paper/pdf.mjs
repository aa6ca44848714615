// A PDF as outside tools read it (poppler): its pages, its words with their places, and its pages as pictures.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const run = (command, words, options) => execFileSync(command, words, { encoding: 'utf8', maxBuffer: 1 << 28, ...options });
const folder = mkdtempSync(join(tmpdir(), 'paper-'));
let count = 0;
const pointsPerMillimetre = 72 / 25.4;

export const pdf = bytes => {
  const path = join(folder, `${count += 1}.pdf`);
  writeFileSync(path, bytes);
  return path;
};

// Width and height of every page in millimetres.
export const pages = path => [...run('pdfinfo', ['-f', '1', '-l', '999', path]).matchAll(/Page +\d+ size: +([\d.]+) x ([\d.]+) pts/g)].map(match => [match[1] / pointsPerMillimetre, match[2] / pointsPerMillimetre]);
export const text = (path, page) => run('pdftotext', ['-f', String(page), '-l', String(page), path, '-']);
const entities = { amp: '&', lt: '<', gt: '>', quot: '"' };
// {word, width}, width in points.
export const wordsOf = (path, page) => [...run('pdftotext', ['-bbox', '-f', String(page), '-l', String(page), path, '-']).matchAll(/<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">([^<]*)</g)]
  .map(([, left, , right, , word]) => ({ word: word.replace(/&(\w+);/g, (whole, name) => entities[name] ?? whole), width: right - left }));

// A page as rows of grey values; `colour` says whether any point of it is not grey.
export const picture = (path, page, dpi) => {
  const bytes = execFileSync('pdftoppm', ['-r', String(dpi), '-f', String(page), '-l', String(page), path], { maxBuffer: 1 << 28 });
  const head = /^P6\s(\d+)\s(\d+)\s255\s/.exec(bytes.subarray(0, 40).toString('latin1'));
  assert.ok(head, 'pdftoppm gives another kind of picture');
  const [width, height] = [+head[1], +head[2]];
  const at = head[0].length;
  const grey = new Uint8Array(width * height);
  let colour = false;
  for (let i = 0; i < grey.length; i += 1) {
    grey[i] = bytes[at + 3 * i];
    colour ||= bytes[at + 3 * i] !== bytes[at + 3 * i + 1] || bytes[at + 3 * i] !== bytes[at + 3 * i + 2];
  }
  return { width, height, grey, colour };
};
export const share = ({ grey }, test) => grey.reduce((sum, value) => sum + (test(value) ? 1 : 0), 0) / grey.length;

// The longest unbroken dark line of the rows from `from` to `to`, in pixels.
export const longestLine = ({ width, grey }, from, to) => {
  let best = 0;
  for (let y = from; y < to; y += 1)
    for (let x = 0, length = 0; x < width; x += 1) {
      length = grey[y * width + x] < 128 ? length + 1 : 0;
      best = Math.max(best, length);
    }
  return best;
};

// As a phone held by hand sees it: cut out, turned by a few degrees, blurred.
export const seenByHand = ({ width, grey, height }, { left, top, size, degrees, blur }) => {
  const out = new Uint8Array(size * size).fill(255);
  const [sin, cos] = [Math.sin(degrees * Math.PI / 180), Math.cos(degrees * Math.PI / 180)];
  const value = (x, y) => (x >= 0 && y >= 0 && x < width && y < height ? grey[y * width + x] : 255);
  for (let y = 0; y < size; y += 1)
    for (let x = 0; x < size; x += 1) {
      const [dx, dy] = [x - size / 2, y - size / 2];
      const [u, v] = [left + size / 2 + cos * dx - sin * dy, top + size / 2 + sin * dx + cos * dy];
      let sum = 0, parts = 0;
      for (let b = -blur; b <= blur; b += 1) for (let a = -blur; a <= blur; a += 1) { sum += value(Math.round(u) + a, Math.round(v) + b); parts += 1; }
      out[y * size + x] = sum / parts;
    }
  const path = join(folder, `${count += 1}.pgm`);
  writeFileSync(path, Buffer.concat([Buffer.from(`P5\n${size} ${size}\n255\n`), out]));
  return path;
};
export const readCode = path => run('zbarimg', ['--quiet', '--raw', '--nodbus', '-Sdisable', '-Sqrcode.enable', path]).trim();
export const bytesOf = path => readFileSync(path);
