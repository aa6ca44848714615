// Fonts made for a test: a font that draws every letter it was given with one shape, and a configuration under which a browser knows
// no other font. So a test that asks which letters a device has gives the same answer on every machine.
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

// Numbers of a font file are written with the first byte first. A table is a list of [bytes, value], or of ready buffers.
const table = (...parts) => Buffer.concat(parts.map(part => {
  if (Buffer.isBuffer(part)) return part;
  const [bytes, value] = part, out = Buffer.alloc(bytes);
  if (bytes === 8) out.writeBigInt64BE(BigInt(value));
  else if (value < 0) out.writeIntBE(value, 0, bytes);
  else out.writeUIntBE(value, 0, bytes);
  return out;
}));
const words = values => values.map(value => [2, value]);
const longs = values => values.map(value => [4, value]);
const padded = buffer => Buffer.concat([buffer, Buffer.alloc((4 - buffer.length % 4) % 4)]);

const perEm = 1000, ascent = 800, descent = -200;
// One closed outline of straight lines: the count of outlines, its bounds, its last point, no instructions, then each point on its own.
const outline = points => {
  const [xs, ys] = [0, 1].map(axis => points.map(point => point[axis]));
  const steps = list => list.map((value, at) => value - (at ? list[at - 1] : 0));
  return padded(table(...words([1, Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys), points.length - 1, 0]),
    Buffer.alloc(points.length, 1), ...words(steps(xs)), ...words(steps(ys))));
};

// Two shapes: the box of a letter the font does not have, and the triangle of every letter it has.
export const fontOf = (family, letters) => {
  const box = outline([[100, 0], [100, 700], [400, 700], [400, 0]]), triangle = outline([[50, 0], [350, 750], [650, 0]]);
  const codes = [...new Set([...letters].map(letter => letter.codePointAt(0)))].sort((a, b) => a - b);
  const groups = table(...codes.flatMap(code => longs([code, code, 1])));
  const named = [[1, family], [2, 'Regular'], [4, family], [6, family.replaceAll(' ', '')]].map(([id, text]) => [id, Buffer.from(text, 'utf16le').swap16()]);
  let place = 0;
  const records = named.map(([id, text]) => { const at = place; place += text.length; return table(...words([3, 1, 0x409, id, text.length, at])); });
  const tables = {
    'OS/2': table(...words([4, 600, 400, 5, 0, 650, 600, 0, 75, 650, 600, 0, 350, 50, 300, 0]), Buffer.alloc(10), ...longs([0, 0, 0, 0]), Buffer.from('TEST'),
      ...words([0x40, Math.min(codes[0], 0xffff), Math.min(codes.at(-1), 0xffff), ascent, descent, 0, ascent, -descent]), ...longs([0, 0]), ...words([500, 700, 0, 32, 1])),
    cmap: table(...words([0, 1, 3, 10]), [4, 12], ...words([12, 0]), ...longs([16 + groups.length, 0, codes.length]), groups),
    glyf: Buffer.concat([box, triangle]),
    head: table(...longs([0x10000, 0x10000, 0, 0x5f0f3cf5]), ...words([3, perEm]), [8, 0], [8, 0], ...words([0, 0, 650, 750, 0, 8, 2, 1, 0])),
    hhea: table([4, 0x10000], ...words([ascent, descent, 0, 700, 0, 0, 650, 1, 0, 0, 0, 0, 0, 0, 0, 2])),
    hmtx: table(...words([500, 100, 700, 50])),
    loca: table(...longs([0, box.length, box.length + triangle.length])),
    maxp: table([4, 0x10000], ...words([2, 4, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0])),
    name: table(...words([0, named.length, 6 + 12 * named.length]), ...records, ...named.map(([, text]) => text)),
    post: table(...longs([0x30000, 0]), ...words([-100, 50]), ...longs([0, 0, 0, 0, 0])),
  };
  const tags = Object.keys(tables).sort(), power = 2 ** Math.floor(Math.log2(tags.length));
  let offset = 12 + 16 * tags.length;
  const entries = tags.map(tag => {
    const body = padded(tables[tag]);
    let sum = 0;
    for (let at = 0; at < body.length; at += 4) sum = (sum + body.readUInt32BE(at)) >>> 0;
    const entry = table(Buffer.from(tag.padEnd(4)), ...longs([sum, offset, tables[tag].length]));
    offset += body.length;
    return entry;
  });
  return Buffer.concat([table([4, 0x10000], ...words([tags.length, 16 * power, Math.log2(power), 16 * (tags.length - power)])), ...entries, ...tags.map(tag => padded(tables[tag]))]);
};

// A configuration under which the only font of the machine has these letters.
export const onlyLetters = letters => {
  const folder = mkdtempSync(join(tmpdir(), 'letters-'));
  mkdirSync(join(folder, 'fonts'));
  writeFileSync(join(folder, 'fonts', 'made.ttf'), fontOf('Made Letters', letters));
  const path = join(folder, 'fonts.conf');
  writeFileSync(path, `<?xml version="1.0"?>\n<!DOCTYPE fontconfig SYSTEM "fonts.dtd">\n<fontconfig><dir>${folder}/fonts</dir><cachedir>${folder}/cache</cachedir></fontconfig>\n`);
  return path;
};
