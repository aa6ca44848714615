// How a plan travels. As a file: readable JSON, the plan as it is and beside it who exported it, when, and the signature. As a code:
// the core's packed text, and before it the same signature in as few characters as can be.
import { members, object, string } from '../text.js';
import { longer, shorter } from './signature.js';

const base64 = bytes => btoa(String.fromCharCode(...bytes));
const unbase64 = text => { try { return Uint8Array.from(atob(text), sign => sign.charCodeAt(0)); } catch { return new Uint8Array(); } };

export const fileOf = ({ plan, fingerprint, at, from, key, value }) => object({ format: string('stopgap.handover'), version: '1', plan, fingerprint: string(fingerprint),
  exported: object({ at: string(at), from: string(from) }), signature: object({ kind: string('ECDSA P-256 SHA-256'), key: string(base64(key)), value: string(base64(value)) }) });

const known = ['format', 'version', 'plan', 'fingerprint', 'exported', 'signature'];
const moment = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/;
const refuse = (path, reason, accepted) => ({ refused: [{ path, reason, ...(accepted ? { accepted } : {}) }] });

// {plan, signed} or {refused}. The plan itself is the core's to judge; `text` has parsed as JSON, `doc` is what it says.
export const readEnvelope = (text, doc) => {
  if (doc.version !== 1) return refuse('/version', doc.version > 1 ? 'newerFormat' : 'outOfRange', '1');
  const strange = Object.keys(doc).find(key => !known.includes(key));
  if (strange) return refuse(`/${strange}`, 'unknownKey');
  const missing = known.find(key => doc[key] === undefined || doc[key] === null);
  if (missing) return refuse(`/${missing}`, 'missing');
  const { exported, signature, fingerprint } = doc;
  if (!/^[0-9a-f]{64}$/.test(fingerprint)) return refuse('/fingerprint', 'wrongType');
  if (!moment.test(exported.at) || Number.isNaN(Date.parse(exported.at))) return refuse('/exported/at', 'wrongType', '2026-11-25T02:10:00Z');
  if (typeof exported.from !== 'string' || [...exported.from].length > 40 || /\p{C}/u.test(exported.from)) return refuse('/exported/from', 'wrongType', 'text');
  const key = unbase64(signature.key), value = unbase64(signature.value);
  if (key.length !== 65 || value.length !== 64) return refuse('/signature', 'wrongType');
  return { plan: members(text).plan, signed: { fingerprint, at: exported.at, from: exported.from, key, value } };
};

// Base45 (RFC 9285), as the core writes the plan: two bytes in three characters that a code holds most closely.
const letters = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:';
export const base45 = bytes => {
  let text = '';
  for (let at = 0; at < bytes.length; at += 2) {
    const both = at + 1 < bytes.length;
    const value = both ? bytes[at] * 256 + bytes[at + 1] : bytes[at];
    text += letters[value % 45] + letters[Math.floor(value / 45) % 45] + (both ? letters[Math.floor(value / 2025)] : '');
  }
  return text;
};
export const unbase45 = text => {
  const bytes = [];
  for (let at = 0; at < text.length; at += 3) {
    const digits = [...text.slice(at, at + 3)].map(sign => letters.indexOf(sign));
    const value = digits.reduceRight((sum, digit) => sum * 45 + digit, 0);
    if (digits.length === 1 || digits.includes(-1) || value >= (digits.length === 3 ? 65536 : 256)) return null;
    bytes.push(...(digits.length === 3 ? [value >> 8, value & 255] : [value]));
  }
  return Uint8Array.from(bytes);
};

// "SIGNED1:", how many characters of signature follow in three figures, those, and the packed text. Inside: the key (33 bytes), the
// signature (64), the seconds since 1970 (4), and the name of the device.
const head = 'SIGNED1:', fixed = 101;
export const codeOf = ({ text, at, from, key, value }) => {
  const seconds = Date.parse(at) / 1000;
  const signature = base45(Uint8Array.from([...shorter(key), ...value, ...[24, 16, 8, 0].map(shift => Math.floor(seconds / 2 ** shift) % 256), ...new TextEncoder().encode(from)]));
  return head + String(signature.length).padStart(3, '0') + signature + text;
};
// {text, signed?} or {refused}: the packed text goes to the core as it is.
export const readCode = code => {
  if (!code.startsWith(head)) return /^SIGNED[1-9][0-9]*:/.test(code) ? refuse('/text', 'newerFormat', head) : { text: code };
  const size = +(code.slice(head.length).match(/^[0-9]{3}/)?.[0] ?? '0');
  const start = head.length + 3;
  const bytes = unbase45(code.slice(start, start + size));
  if (!bytes || bytes.length < fixed || code.length < start + size) return refuse('/text', 'fingerprintMismatch');
  const seconds = bytes.slice(97, fixed).reduce((sum, byte) => sum * 256 + byte, 0);
  let from;
  try { from = new TextDecoder('utf-8', { fatal: true }).decode(bytes.slice(fixed)); } catch { return refuse('/text', 'fingerprintMismatch'); }
  if (/\p{C}/u.test(from)) return refuse('/text', 'fingerprintMismatch');
  const at = `${new Date(seconds * 1000).toISOString().slice(0, 19)}Z`;
  return { text: code.slice(start + size), signed: { at, from, key: longer(bytes.slice(0, 33)), value: bytes.slice(33, 97) } };
};
