import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson, wellFormed } from '@/lib/ledger/canonical';

/** RFC 8785, Appendix B: IEEE 754 bits and the text of the number. */
const APPENDIX_B: [bits: string, text: string][] = [
  ['0000000000000000', '0'],
  ['8000000000000000', '0'],
  ['0000000000000001', '5e-324'],
  ['8000000000000001', '-5e-324'],
  ['7fefffffffffffff', '1.7976931348623157e+308'],
  ['ffefffffffffffff', '-1.7976931348623157e+308'],
  ['4340000000000000', '9007199254740992'],
  ['c340000000000000', '-9007199254740992'],
  ['4430000000000000', '295147905179352830000'],
  ['44b52d02c7e14af5', '9.999999999999997e+22'],
  ['44b52d02c7e14af6', '1e+23'],
  ['44b52d02c7e14af7', '1.0000000000000001e+23'],
  ['444b1ae4d6e2ef4e', '999999999999999700000'],
  ['444b1ae4d6e2ef4f', '999999999999999900000'],
  ['444b1ae4d6e2ef50', '1e+21'],
  ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
  ['3eb0c6f7a0b5ed8d', '0.000001'],
  ['41b3de4355555553', '333333333.3333332'],
  ['41b3de4355555554', '333333333.33333325'],
  ['41b3de4355555555', '333333333.3333333'],
  ['41b3de4355555556', '333333333.3333334'],
  ['41b3de4355555557', '333333333.33333343'],
  ['becbf647612f3696', '-0.0000033333333333333333'],
  ['43143ff3c1cb0959', '1424953923781206.2'],
];

/** RFC 8785, §3.2.2: the sample, and §3.2.4: the bytes of its canonical form. */
const SAMPLE = String.raw`{
  "numbers": [333333333.33333329, 1E30, 4.50,
              2e-3, 0.000000000000000000000000001],
  "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
  "literals": [null, true, false]
}`;
const SAMPLE_BYTES = `
  7b 22 6c 69 74 65 72 61 6c 73 22 3a 5b 6e 75 6c 6c 2c 74 72
  75 65 2c 66 61 6c 73 65 5d 2c 22 6e 75 6d 62 65 72 73 22 3a
  5b 33 33 33 33 33 33 33 33 33 2e 33 33 33 33 33 33 33 2c 31
  65 2b 33 30 2c 34 2e 35 2c 30 2e 30 30 32 2c 31 65 2d 32 37
  5d 2c 22 73 74 72 69 6e 67 22 3a 22 e2 82 ac 24 5c 75 30 30
  30 66 5c 6e 41 27 42 5c 22 5c 5c 5c 5c 5c 22 2f 22 7d`;

/** RFC 8785, §3.2.3: names that are told apart by UTF-16 order alone, and the order of their values. */
const ORDER_SAMPLE = String.raw`{
  "\u20ac": "Euro Sign",
  "\r": "Carriage Return",
  "\ufb33": "Hebrew Letter Dalet With Dagesh",
  "1": "One",
  "\ud83d\ude00": "Emoji: Grinning Face",
  "\u0080": "Control",
  "\u00f6": "Latin Small Letter O With Diaeresis"
}`;
const ORDER = [
  'Carriage Return',
  'One',
  'Control',
  'Latin Small Letter O With Diaeresis',
  'Euro Sign',
  'Emoji: Grinning Face',
  'Hebrew Letter Dalet With Dagesh',
];

function fromBits(bits: string): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setBigUint64(0, BigInt(`0x${bits}`));
  return view.getFloat64(0);
}

describe('canonical JSON, by the published examples of RFC 8785', () => {
  it.each(APPENDIX_B)('writes %s as %s', (bits, text) => {
    expect(canonicalJson(fromBits(bits))).toBe(text);
  });

  it.each(['7fffffffffffffff', '7ff0000000000000', 'fff0000000000000'])('has no form for %s', (bits) => {
    expect(() => canonicalJson(fromBits(bits))).toThrow(RangeError);
  });

  it('gives the very bytes of the sample', () => {
    const bytes = Buffer.from(canonicalJson(JSON.parse(SAMPLE)), 'utf8').toString('hex');
    expect(bytes).toBe(SAMPLE_BYTES.replaceAll(/\s/g, ''));
  });

  it('orders names by UTF-16 code units', () => {
    const written = canonicalJson(JSON.parse(ORDER_SAMPLE));
    expect([...written.matchAll(/":"([^"]+)"/g)].map(([, value]) => value)).toEqual(ORDER);
  });
});

describe('canonical JSON of what the program hands in', () => {
  it('does not depend on the order in which members were written, at any depth', () => {
    const shuffle = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(shuffle);
      if (value === null || typeof value !== 'object') return value;
      return Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([name, inner]) => [name, shuffle(inner)]),
      );
    };
    fc.assert(
      fc.property(fc.jsonValue().map(wellFormed), (value) => {
        const text = canonicalJson(value);
        expect(canonicalJson(shuffle(value))).toBe(text);
        // what is read back from it is written the same: the stored text is its own canonical form
        expect(canonicalJson(JSON.parse(text))).toBe(text);
      }),
      { numRuns: 500 },
    );
  });

  it('leaves out what is undefined, and refuses what is not plain data', () => {
    expect(canonicalJson({ b: undefined, a: [1] })).toBe('{"a":[1]}');
    for (const value of [undefined, () => 1, 1n, new Date(0), new Map(), [undefined]]) {
      expect(() => canonicalJson(value)).toThrow(TypeError);
    }
  });

  it('refuses half a surrogate pair, which a UTF-8 store would silently replace', () => {
    expect(() => canonicalJson({ note: 'a\ud83d' })).toThrow(RangeError);
    expect(() => canonicalJson({ 'a\ude00': 1 })).toThrow(RangeError);
    expect(canonicalJson(wellFormed({ 'a\ude00': ['b\ud83d', '😀'] }))).toBe('{"a\uFFFD":["b\uFFFD","😀"]}');
  });
});
