// Exact fractions on whole numbers of any size, and what a dose still has to do, to thirty-six digits.
const common = (a, b) => {
  a = a < 0n ? -a : a;
  while (b) [a, b] = [b, a % b];
  return a;
};

export class Fraction {
  constructor(n, d = 1n) {
    if (d < 0n) [n, d] = [-n, -d];
    const divisor = common(n, d);
    this.n = divisor > 1n ? n / divisor : n;
    this.d = divisor > 1n ? d / divisor : d;
  }
  add(other) { other = exact(other); return new Fraction(this.n * other.d + other.n * this.d, this.d * other.d); }
  sub(other) { other = exact(other); return new Fraction(this.n * other.d - other.n * this.d, this.d * other.d); }
  mul(other) { other = exact(other); return new Fraction(this.n * other.n, this.d * other.d); }
  div(other) { other = exact(other); return new Fraction(this.n * other.d, this.d * other.n); }
  cmp(other) { other = exact(other); const x = this.n * other.d - other.n * this.d; return x < 0n ? -1 : x > 0n ? 1 : 0; }
  lt(other) { return this.cmp(other) < 0; }
  le(other) { return this.cmp(other) <= 0; }
  gt(other) { return this.cmp(other) > 0; }
  ge(other) { return this.cmp(other) >= 0; }
  eq(other) { return this.cmp(other) === 0; }
  floor() { const whole = this.n / this.d; return this.n < 0n && whole * this.d !== this.n ? whole - 1n : whole; }
  ceil() { return -(new Fraction(-this.n, this.d).floor()); }
  // A decimal text, rounded half away from zero, without needless zeros.
  text(places = 2) {
    const scale = 10n ** BigInt(places), negative = this.n < 0n, n = negative ? -this.n : this.n;
    const rounded = (n * scale * 2n + this.d) / (this.d * 2n);
    const whole = (rounded / scale).toString(), rest = (rounded % scale).toString().padStart(places, '0').replace(/0+$/, '');
    return `${negative && rounded !== 0n ? '-' : ''}${whole}${rest ? `.${rest}` : ''}`;
  }
}

// From the shortest text of a number, so that 0.1 is a tenth.
export const exact = value => {
  if (value instanceof Fraction) return value;
  if (typeof value === 'bigint') return new Fraction(value);
  const match = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/i.exec(String(value));
  if (!match) throw new Error(`not a decimal: ${value}`);
  const [, minus, whole, places = '', exponent = '0'] = match, power = Number.parseInt(exponent, 10);
  let n = BigInt(whole + places), d = 10n ** BigInt(places.length);
  if (power > 0) n *= 10n ** BigInt(power);
  else d *= 10n ** BigInt(-power);
  return new Fraction(minus ? -n : n, d);
};
export const greater = (a, b) => (exact(a).ge(b) ? exact(a) : exact(b));
export const lesser = (a, b) => (exact(a).le(b) ? exact(a) : exact(b));
export const none = exact(0);

// F3(z) = (1 + z + z²/2)·e^(−z), z = minutes · 6.295794 / minutes of action; 0 after the hours of action.
const scale = 10n ** 40n, known = new Map();
export const remaining = (seconds, actionHours) => {
  const key = `${seconds}/${actionHours.n}/${actionHours.d}`;
  if (known.has(key)) return known.get(key);
  let share = none;
  if (seconds <= 0) share = exact(1);
  else if (exact(seconds).le(actionHours.mul(3600))) {
    const z = exact(seconds).div(60).mul(exact('6.295794')).div(actionHours.mul(60));
    let term = scale, sum = scale;   // e^z by its series
    for (let k = 1n; term !== 0n; k++) { term = term * z.n / (z.d * k); sum += term; }
    const polynomial = exact(1).add(z).add(z.mul(z).div(2));
    share = new Fraction(polynomial.n * (scale * scale / sum) / polynomial.d, scale);
  }
  known.set(key, share);
  return share;
};
