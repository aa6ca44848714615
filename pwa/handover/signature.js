// What leaves this device is signed: ECDSA on P-256 over the plan's fingerprint, the moment and the name of the device. It shows that
// nothing changed since then, and which key signed. It never shows that anybody approved the plan.

const kind = { name: 'ECDSA', namedCurve: 'P-256' }, how = { name: 'ECDSA', hash: 'SHA-256' };

export const makeKey = () => crypto.subtle.generateKey(kind, false, ['sign', 'verify']);
// 65 bytes: 4, x, y.
export const publicBytes = async pair => new Uint8Array(await crypto.subtle.exportKey('raw', pair.publicKey));

const said = ({ fingerprint, at, from }) => new TextEncoder().encode(['stopgap.handover 1', fingerprint, at, from].join('\n'));
export const sign = async (pair, what) => new Uint8Array(await crypto.subtle.sign(how, pair.privateKey, said(what)));
export const verify = async (key, value, what) => {
  try {
    return await crypto.subtle.verify(how, await crypto.subtle.importKey('raw', key, kind, true, ['verify']), value, said(what));
  } catch { return false; }   // no point of the curve, or no signature
};

// A key is told from another by the first signs of its checksum.
export const keyName = async key => [...new Uint8Array(await crypto.subtle.digest('SHA-256', key))].slice(0, 8).map(byte => byte.toString(16).padStart(2, '0')).join('');

// In a code a point takes 33 bytes: its x, and whether y is odd. y is found again on the curve (SEC 1, 2.3.4; the numbers of P-256
// are those of FIPS 186-4, D.1.2.3): y² = x³ - 3x + b.
const p = (1n << 256n) - (1n << 224n) + (1n << 192n) + (1n << 96n) - 1n;
const b = 0x5ac635d8aa3a93e7b3ebbd55769886bc651d06b0cc53b0f63bce3c3e27d2604bn;
const power = (base, exponent) => {
  let result = 1n;
  for (let square = base % p, rest = exponent; rest > 0n; rest >>= 1n) {
    if (rest & 1n) result = result * square % p;
    square = square * square % p;
  }
  return result;
};
const bigOf = bytes => BigInt(`0x${[...bytes].map(byte => byte.toString(16).padStart(2, '0')).join('')}`);
const bytesOf = big => Uint8Array.from(big.toString(16).padStart(64, '0').match(/../g), pair => Number.parseInt(pair, 16));

export const shorter = key => Uint8Array.from([2 + (key[64] & 1), ...key.slice(1, 33)]);
export const longer = short => {
  const x = bigOf(short.slice(1));
  let y = power(x ** 3n - 3n * x + b + 3n * p, (p + 1n) / 4n);
  if (Boolean(y & 1n) !== Boolean(short[0] & 1)) y = p - y;
  return Uint8Array.from([4, ...bytesOf(x), ...bytesOf(y)]);
};
