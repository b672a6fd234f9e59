/**
 * JSON in one form only, by RFC 8785 (JSON Canonicalization Scheme): no blanks, members in the order of the UTF-16 code
 * units of their names, numbers and strings as ECMAScript writes them. The same content always gives the same text.
 *
 * A member that is `undefined` is left out, as JSON does. Throws on what I-JSON has no form for: numbers that are not
 * finite, half a surrogate pair, and anything that is not plain data.
 */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'number') return numberText(value);
  if (typeof value === 'string') return stringText(value);
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value !== 'object') throw new TypeError(`${typeof value} has no JSON form`);
  if (!isPlain(value)) throw new TypeError('only plain objects have a canonical form');
  const members = Object.entries(value)
    .filter(([, inner]) => inner !== undefined)
    // `<` compares UTF-16 code units, which is what RFC 8785 §3.2.3 asks for
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, inner]) => `${stringText(name)}:${canonicalJson(inner)}`);
  return `{${members.join(',')}}`;
}

/** Text with each half of a surrogate pair replaced by U+FFFD, which is what a UTF-8 store would make of it anyway. */
export function wellFormed<T>(value: T): T {
  if (typeof value === 'string') return value.replaceAll(HALF_PAIR, '\uFFFD') as T;
  if (Array.isArray(value)) return value.map(wellFormed) as T;
  if (value === null || typeof value !== 'object' || !isPlain(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, inner]) => [wellFormed(name), wellFormed(inner)]),
  ) as T;
}

const HALF_PAIR = /\p{Surrogate}/gu;

function numberText(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError('JSON has no form for a number that is not finite');
  return JSON.stringify(value);
}

function stringText(value: string): string {
  const text = JSON.stringify(value);
  // JSON writes half a pair as its escape; the slow look is taken only where there may be one
  if (text.includes('\\ud') && value.search(HALF_PAIR) !== -1)
    throw new RangeError('half a surrogate pair has no UTF-8 form');
  return text;
}

function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}
