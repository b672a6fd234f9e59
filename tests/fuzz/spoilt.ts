import fc from 'fast-check';

/** One way to spoil a run of characters or bytes: where, how, and with what. */
const edit = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  how: fc.constantFrom('put', 'over', 'cut', 'twice', 'end', 'swap' as const),
  long: fc.integer({ min: 1, max: 12 }),
});

/** Texts that tools are known to stumble over. */
const AWKWARD = [
  '',
  '\u0000',
  '\u001d',
  '\u001e\u0004',
  '\uFEFF',
  '\uFFFD',
  '\u202e',
  '\ud800',
  '"',
  '""',
  "'",
  ',',
  ';',
  '\t',
  '\r',
  '\n',
  '\r\n',
  '=1+1',
  '@SUM(A1)',
  '-0',
  '1e308',
  '1.23E+13',
  '0x10',
  '１２３',
  '🦴',
  'e\u0301',
  ']C1',
  ']d2',
  '(01)',
  '(10',
  '99999999999999999999',
  '../../',
  '<script>',
  '%00',
  '{{7*7}}',
  '__proto__',
  'a'.repeat(300),
];

const inserted = fc.oneof(
  fc.constantFrom(...AWKWARD),
  fc.string({ unit: 'binary', maxLength: 6 }),
  fc.string({ maxLength: 6 }),
);

/** A text as it should be, with up to `most` things done to it. */
export const spoiltText = (sound: fc.Arbitrary<string>, most = 6): fc.Arbitrary<string> =>
  fc
    .tuple(sound, fc.array(fc.tuple(edit, inserted), { maxLength: most }))
    .map(([text, edits]) =>
      edits.reduce((now, [{ at, how, long }, put]) => edited(now, at, how, long, put), text),
    );

function edited(text: string, share: number, how: string, long: number, put: string): string {
  const at = Math.floor(share * text.length);
  const [before, after] = [text.slice(0, at), text.slice(at)];
  if (how === 'put') return before + put + after;
  if (how === 'over') return before + put + after.slice(put.length || 1);
  if (how === 'cut') return before + after.slice(long);
  if (how === 'twice') return before + after.slice(0, long) + after;
  if (how === 'end') return before;
  return before + after.slice(1, 2) + after.slice(0, 1) + after.slice(2);
}

/** Bytes as they should be, with up to `most` things done to them. */
export const spoiltBytes = (sound: fc.Arbitrary<Uint8Array>, most = 8): fc.Arbitrary<Uint8Array> =>
  fc
    .tuple(sound, fc.array(fc.tuple(edit, fc.uint8Array({ maxLength: 8 })), { maxLength: most }))
    .map(([bytes, edits]) => {
      let now = [...bytes];
      for (const [{ at: share, how, long }, put] of edits) {
        const at = Math.floor(share * now.length);
        if (how === 'put') now.splice(at, 0, ...put);
        else if (how === 'over') now.splice(at, put.length, ...put);
        else if (how === 'cut') now.splice(at, long);
        else if (how === 'twice') now.splice(at, 0, ...now.slice(at, at + long));
        else if (how === 'end') now = now.slice(0, at);
        else [now[at], now[at + 1]] = [now[at + 1] ?? 0, now[at] ?? 0];
      }
      return Uint8Array.from(now);
    });

/** Values no member expects, of which some are one step from sound. */
const ODD_VALUES: unknown[] = [
  null,
  true,
  false,
  0,
  -1,
  -0.5,
  1e308,
  -1e308,
  1e-320,
  2 ** 53,
  '',
  ' ',
  'NaN',
  '2026-02-30',
  '9999-12-31',
  [],
  [null],
  {},
  { __proto__: null },
  { constructor: 1, toString: 2 },
  'x'.repeat(5_000),
  [[[[[[[[[[[[]]]]]]]]]]]],
];

const change = fc.record({
  at: fc.nat(),
  how: fc.constantFrom('replace', 'remove', 'add', 'repeat', 'swap', 'nudge' as const),
  value: fc.oneof(
    fc.constantFrom(...ODD_VALUES),
    fc.integer(),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.string({ maxLength: 12 }),
  ),
});

type Change = typeof change extends fc.Arbitrary<infer C> ? C : never;

/** Plain JSON as it should be, with up to `most` of its members replaced, removed, repeated, added or nudged. */
export const spoiltJson = (sound: fc.Arbitrary<unknown>, most = 4): fc.Arbitrary<unknown> =>
  fc.tuple(sound, fc.array(change, { maxLength: most })).map(([value, changes]) => {
    const holder = { value: structuredClone(value) };
    for (const one of changes) alter(holder, one);
    return holder.value;
  });

type Branch = Record<string, unknown> | unknown[];
interface Spot {
  branch: Branch;
  key: string | number;
}

function alter(holder: { value: unknown }, { at, how, value: chosen }: Change): void {
  // a copy: what is put in twice is altered once, and never put into itself, which no JSON could be
  const value: unknown = structuredClone(chosen);
  const spots: Spot[] = [];
  collect(holder, spots);
  const spot = spots[at % spots.length];
  if (!spot) return;
  const branch = spot.branch as Record<string | number, unknown>;
  const now = branch[spot.key];
  if (how === 'remove') remove(spot);
  else if (how === 'nudge' && typeof now === 'number')
    branch[spot.key] = now + (typeof value === 'number' ? value : 1);
  else if (how === 'nudge' && typeof now === 'string')
    branch[spot.key] = `${now}${(JSON.stringify(value) ?? '').slice(0, 20)}`;
  else if (how === 'add' && isBranch(now)) put(now, value);
  else if (how === 'repeat' && Array.isArray(now)) branch[spot.key] = [...now, ...now];
  else if (how === 'swap') {
    const other = spots[(at + 7) % spots.length];
    if (other)
      branch[spot.key] = structuredClone((other.branch as Record<string | number, unknown>)[other.key]);
  } else branch[spot.key] = value;
}

const isBranch = (value: unknown): value is Branch => typeof value === 'object' && value !== null;

function remove({ branch, key }: Spot): void {
  if (Array.isArray(branch)) branch.splice(Number(key), 1);
  else delete branch[key];
}

function put(branch: Branch, value: unknown): void {
  if (Array.isArray(branch)) branch.push(value);
  else branch.surprise = value;
}

function collect(branch: Branch, spots: Spot[]): void {
  const keys = Array.isArray(branch) ? branch.keys() : Object.keys(branch);
  for (const key of keys) {
    spots.push({ branch, key });
    const inner = (branch as Record<string | number, unknown>)[key];
    if (isBranch(inner)) collect(inner, spots);
  }
}
