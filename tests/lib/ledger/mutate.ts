import { canonicalJson } from '@/lib/ledger/canonical';
import type { LedgerRow } from '@/lib/ledger/chain';
import { exportLine } from '@/lib/ledger/exportFile';
import { chained } from '../../fixtures/ledgerRows';

/** Numbers that look random and are the same every time (mulberry32). */
export function seeded(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) % below;
  };
}

type Draw = (below: number) => number;
export interface Mutated {
  how: string;
  bytes: Uint8Array;
}
interface Given {
  rows: readonly LedgerRow[];
  draw: Draw;
}

const TEXTS = ['doneAt', 'enteredAt', 'action', 'subjectKind', 'subjectId', 'detailText'] as const;

/** Changes one character, one at the end, or the case of one. */
function otherText(text: string, draw: Draw): string {
  const at = draw(Math.max(1, text.length));
  const ways = [
    () => `${text.slice(0, at)}${'0123456789abcxyz'[draw(16)]}${text.slice(at + 1)}`,
    () => `${text} `,
    () => text.slice(0, -1),
    () => text.toUpperCase(),
    () => text.normalize('NFD'),
    () => text.replace('0', 'O'),
    () => '',
  ];
  return (ways[draw(ways.length)] ?? (() => text))();
}

function edited(given: Given, how: string, change: (row: LedgerRow) => LedgerRow, below?: number): Mutated {
  const { rows, draw } = given;
  const at = draw(below ?? rows.length);
  return {
    how: `${how} of entry ${at + 1}`,
    bytes: bytesOf(rows.map((row, index) => (index === at ? change(row) : row))),
  };
}

/** The original's own lines are written once. */
const written = new WeakMap<LedgerRow, string>();
function lineOf(row: LedgerRow): string {
  const known = written.get(row) ?? exportLine(row);
  written.set(row, known);
  return known;
}
const bytesOf = (rows: readonly LedgerRow[]) => Buffer.from(rows.map(lineOf).join(''), 'utf8');

/** Every way of tampering with an exported ledger that the chain alone must show. */
const WAYS: Record<string, (given: Given) => Mutated> = {
  text: (given) => {
    const field = TEXTS[given.draw(TEXTS.length)] ?? 'action';
    return edited(given, `text of ${field}`, (row) => ({
      ...row,
      [field]: otherText(row[field], given.draw),
    }));
  },
  person: (given) =>
    edited(given, 'person', (row) => ({
      ...row,
      personId: row.personId === null ? 'person_1' : given.draw(2) === 0 ? null : `${row.personId}9`,
    })),
  number: (given) =>
    edited(given, 'number', (row) => ({
      ...row,
      seq: row.seq + (given.draw(2) === 0 ? 1 : -1) * (1 + given.draw(5)),
    })),
  form: (given) =>
    edited(given, 'form', (row) => ({
      ...row,
      form: [0, 1, 2, 3, -2].filter((f) => f !== row.form)[given.draw(4)] ?? 0,
    })),
  hashes: (given) => {
    const field = given.draw(2) === 0 ? 'hash' : 'previousHash';
    return edited(given, field, (row) => ({ ...row, [field]: otherText(row[field], given.draw) }));
  },
  // the detail reads the same, its text does not: member order, blanks, a name twice, another spelling
  detailSpelling: (given) =>
    edited(given, 'spelling of the detail', (row) => {
      const value = JSON.parse(row.detailText) as Record<string, unknown>;
      const ways = [
        () => JSON.stringify(value, null, 1),
        () => JSON.stringify(Object.fromEntries(Object.entries(value).reverse())),
        () => row.detailText.replace('{', '{"note":"first",'),
        () => row.detailText.replace('a', '\\u0061'),
        () => row.detailText.replace(/:(\d+)/, ':$1.0'),
        () => row.detailText.replace(/:(\d+)/, ':$1e0'),
      ];
      return { ...row, detailText: (ways[given.draw(ways.length)] ?? (() => ''))() };
    }),
  // the last entry is left out here: see what only a head shows
  oneRehashed: (given) =>
    edited(
      given,
      'content, its own hash made anew,',
      (row) => chained({ ...row, personId: `person_${given.draw(1000) + 50}` }, row.previousHash),
      given.rows.length - 1,
    ),
  swapped: ({ rows, draw }) => {
    const at = draw(rows.length - 1);
    const other = at + 1 + draw(rows.length - at - 1);
    const next = [...rows];
    [next[at], next[other]] = [next[other] as LedgerRow, next[at] as LedgerRow];
    return { how: `entries ${at + 1} and ${other + 1} swapped`, bytes: bytesOf(next) };
  },
  // not the tail: that is what only a head shows
  deleted: ({ rows, draw }) => {
    const at = draw(rows.length - 1);
    const many = 1 + draw(Math.min(3, rows.length - 1 - at));
    return {
      how: `${many} deleted at ${at + 1}`,
      bytes: bytesOf([...rows.slice(0, at), ...rows.slice(at + many)]),
    };
  },
  deletedAndRenumbered: ({ rows, draw }) => {
    const at = draw(rows.length - 1);
    const rest = rows.slice(at + 1).map((row) => ({ ...row, seq: row.seq - 1 }));
    return {
      how: `entry ${at + 1} deleted, the rest renumbered`,
      bytes: bytesOf([...rows.slice(0, at), ...rest]),
    };
  },
  doubled: ({ rows, draw }) => {
    const at = draw(rows.length);
    const row = rows[at] as LedgerRow;
    return {
      how: `entry ${at + 1} twice`,
      bytes: bytesOf([...rows.slice(0, at + 1), row, ...rows.slice(at + 1)]),
    };
  },
  inserted: ({ rows, draw }) => {
    const at = 1 + draw(rows.length - 1);
    const before = rows[at - 1] as LedgerRow;
    const forged = chained({ ...before, seq: at + 1, form: 2, personId: 'person_9' }, before.hash);
    const rest = rows.slice(at).map((row) => ({ ...row, seq: row.seq + 1 }));
    return {
      how: `one inserted at ${at + 1}, the rest renumbered`,
      bytes: bytesOf([...rows.slice(0, at), forged, ...rest]),
    };
  },
  moved: ({ rows, draw }) => {
    const from = draw(rows.length - 1);
    const rest = rows.filter((_, at) => at !== from);
    rest.splice(from + 1 + draw(rest.length - from), 0, rows[from] as LedgerRow);
    return { how: `entry ${from + 1} moved down`, bytes: bytesOf(rest) };
  },
  // the file as bytes and lines
  encoding: ({ rows, draw }) => {
    const whole = bytesOf(rows);
    const text = whole.toString('utf8');
    const lines = text.split('\n').slice(0, -1);
    const at = draw(lines.length);
    const line = lines[at] ?? '';
    const instead = (other: string) =>
      Buffer.from(`${lines.map((l, i) => (i === at ? other : l)).join('\n')}\n`);
    const value = JSON.parse(line) as Record<string, unknown>;
    const ways: [string, () => Uint8Array][] = [
      ['a byte order mark', () => Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), whole])],
      ['carriage returns', () => Buffer.from(text.replaceAll('\n', '\r\n'))],
      ['an empty line', () => instead(`${line}\n`)],
      ['no last line feed', () => whole.subarray(0, -1)],
      ['half a last line', () => whole.subarray(0, whole.length - 2 - draw(40))],
      ['a blank in a line', () => instead(line.replace(',', ', '))],
      [
        'another order of members',
        () => instead(JSON.stringify(Object.fromEntries(Object.entries(value).reverse()))),
      ],
      ['a member more', () => instead(JSON.stringify({ ...value, zone: 'Z' }))],
      ['a member less', () => instead(line.replace(/"subjectKind":"[a-z]+"/, '').replace(',}', '}'))],
      ['a member twice', () => instead(line.replace('{', '{"action":"accept-load",'))],
      ['a member under a name of its prototype', () => instead(line.replace('{', '{"__proto__":{"seq":1},'))],
      [
        'a letter as its escape',
        () =>
          instead(
            line.replace(
              /"action":"(.)/,
              (_, c: string) => `"action":"\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
            ),
          ),
      ],
      ['a number as text', () => instead(line.replace(/"seq":(\d+)/, '"seq":"$1"'))],
      ['a number with a fraction', () => instead(line.replace(/"seq":(\d+)/, '"seq":$1.0'))],
      [
        'hash digits as capitals',
        () => instead(line.replace(/"hash":"([0-9a-f]+)"/, (_, h: string) => `"hash":"${h.toUpperCase()}a"`)),
      ],
      [
        'bytes that are not UTF-8',
        () => Buffer.concat([whole.subarray(0, -3), Buffer.from([0xc3]), whole.subarray(-3)]),
      ],
      ['Latin-1', () => Buffer.from(text, 'latin1')],
      ['UTF-16', () => Buffer.from(text, 'utf16le')],
      [
        'an overlong form',
        () => Buffer.concat([whole.subarray(0, 1), Buffer.from([0xc0, 0xa2]), whole.subarray(2)]),
      ],
      ['half a surrogate pair', () => instead(line.replace(/"subjectId":"/, '"subjectId":"\\ud83d'))],
      ['one line as an array', () => instead(`[${line}]`)],
      [
        'all lines as one array',
        () => Buffer.from(canonicalJson(lines.map((l) => JSON.parse(l) as unknown))),
      ],
      [
        'one bit',
        () => {
          const bent = Buffer.from(whole);
          const place = draw(bent.length);
          bent[place] = (bent[place] ?? 0) ^ (1 << draw(8));
          return bent;
        },
      ],
    ];
    const [how, make] = ways[draw(ways.length)] as [string, () => Uint8Array];
    return { how: `${how}, line ${at + 1}`, bytes: make() };
  },
};
export const WAY_NAMES = Object.keys(WAYS);

/** A copy that differs from the original, tampered with in a way drawn by `seed`. */
export function mutated(rows: readonly LedgerRow[], seed: number): Mutated {
  const original = bytesOf(rows);
  const draw = seeded(seed);
  const way = WAYS[WAY_NAMES[seed % WAY_NAMES.length] ?? ''];
  if (!way) throw new Error('no way');
  for (;;) {
    const copy = way({ rows, draw });
    // a change that changes nothing (the case of a text without letters) is drawn again
    if (Buffer.compare(copy.bytes, original) !== 0) return copy;
  }
}
