import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type CompletenessOutput,
  checkCompleteness,
  completeness,
  completenessInput,
} from '@/lib/calculations/completeness/completeness';
import examples from '../../fixtures/calculation-examples.json';

interface Line {
  line: string;
  item?: string;
  mustHaveClass?: number;
  expected?: number;
  minimum?: number;
  found?: number | null;
  massGrams?: number | null;
  substitutes?: string[];
}

const lineOf = (line: Line) => ({
  item: line.line,
  mustHaveClass: 3,
  expected: 1,
  minimum: 0,
  found: 1,
  massGrams: 10,
  ...line,
});

function answered(lines: readonly Line[], more: object = {}): CompletenessOutput {
  const answer = completeness(
    completenessInput.parse({ lines: lines.map(lineOf), containerGrams: 0, ...more }),
  );
  if (answer.outcome !== 'answered') throw new Error('not established');
  return answer.answer;
}

describe('C1, the worked example: 118 expected, three lines short, ten must-haves', () => {
  const [c1] = examples.completeness;
  const { expect: expected } = c1 ?? { expect: null };
  const short: Line[] = [
    { line: 'pilot bit 2.5', mustHaveClass: 2, expected: 2, minimum: 1, found: 1 },
    { line: 'sleeve 2.5/3.5', mustHaveClass: 1, expected: 1, minimum: 1, found: 0 },
    { line: 'cortical screw 3.5 × 16', mustHaveClass: 2, expected: 6, minimum: 2, found: 4 },
  ];
  const whole: Line[] = [
    ...Array.from({ length: 7 }, (_, at) => ({ line: `must-have ${at}`, mustHaveClass: 1, minimum: 1 })),
    { line: 'the other 102 pieces', expected: 102, found: 102 },
  ];

  test('114 pieces, 96.6 %, 9 of 10 must-haves; a technician may not send it', () => {
    const answer = answered([...short, ...whole]);
    expect(answer.pieces).toMatchObject({
      expected: 118,
      found: expected?.piecesFound,
      percent: expected?.piecesPercent,
    });
    expect(answer.mustHaves).toMatchObject({ met: expected?.mustHavesMet, of: expected?.mustHaves });
    expect(answer.mustHaves.lines).toEqual([
      expect.objectContaining({ line: expected?.blocker, state: 'notMet' }),
    ]);
    expect(answer.maySend.who).toBe('theatreLeadAndSurgeon');
  });

  test('a surplus on another line leaves 96.6 % unchanged', () => {
    const over = [...whole.slice(0, -1), { line: 'the other 102 pieces', expected: 102, found: 109 }];
    const answer = answered([...short, ...over]);
    expect(answer.pieces).toMatchObject({ found: 114, percent: 96.6, surplus: 7 });
  });

  test('a sterile pouch of the sleeve beside the set meets it, at supervisor level', () => {
    const answer = answered([...short, ...whole], { pouches: [{ item: 'sleeve 2.5/3.5', pieces: 1 }] });
    expect(answer.mustHaves).toMatchObject({ met: 10, lines: [{ state: 'metByPouch' }] });
    expect(answer.maySend.who).toBe('supervisor');
    expect(answer.pieces.found).toBe(114);
  });
});

// design: "When a set may go"; local policy, common practice, no source
describe('who may send it', () => {
  const must = { mustHaveClass: 2, minimum: 1 };
  test.each([
    ['whole', [{ line: 'a' }], 'anyTechnician'],
    ['class 3 short', [{ line: 'a', found: 0 }], 'technicianShort'],
    ['class 2 short', [{ line: 'a', ...must, found: 0 }], 'supervisor'],
    [
      'class 2 carried by its substitute',
      [{ line: 'a', ...must, found: 0, substitutes: ['b'] }, { line: 'b' }],
      'supervisor',
    ],
    [
      'class 1 short',
      [{ line: 'a', mustHaveClass: 1, minimum: 1, found: 0, substitutes: ['b'] }, { line: 'b' }],
      'theatreLeadAndSurgeon',
    ],
    ['a piece over', [{ line: 'a', found: 2 }], 'nobodyYet'],
  ] as [string, Line[], string][])('%s', (_why, lines, who) => {
    expect(answered(lines).maySend.who).toBe(who);
  });
});

describe('substitutes', () => {
  const short = (line: string) => ({ line, mustHaveClass: 2, minimum: 1, found: 0, substitutes: ['spare'] });

  test('one spare piece stands in once', () => {
    const answer = answered([short('a'), short('b'), { line: 'spare' }]);
    expect(answer.mustHaves).toMatchObject({ met: 1, of: 2 });
  });

  test('a must-have lends only what it has beyond its own minimum', () => {
    const spare = { line: 'spare', mustHaveClass: 2, expected: 2, minimum: 1 };
    expect(answered([short('a'), { ...spare, found: 1 }]).mustHaves.met).toBe(1);
    expect(answered([short('a'), { ...spare, found: 2 }]).mustHaves.met).toBe(2);
  });

  test('approval is one way and is not followed further', () => {
    const chain = [
      { ...short('a'), substitutes: ['b'] },
      { line: 'b', mustHaveClass: 3, found: 0, substitutes: ['c'] },
      { line: 'c', substitutes: [] },
    ];
    expect(answered(chain).mustHaves.met).toBe(0);
  });

  test('circular approval neither hangs nor makes pieces', () => {
    const ring = [
      { ...short('a'), substitutes: ['b'] },
      { ...short('b'), substitutes: ['a'] },
    ];
    expect(answered(ring).mustHaves.met).toBe(0);
  });
});

describe('mass', () => {
  // N3: trays of 8.2, 9.6 and 12.1 kg; over 7 kg three, over 10 kg one, over 11.34 kg one
  const [n3] = examples['mass-limits'];
  test('N3, the worked example', () => {
    const trays =
      n3?.traysKg.map((kg) => answered([{ line: 'a', massGrams: Math.round(kg * 1000) }]).mass) ?? [];
    for (const [kg, over] of Object.entries(n3?.expect.overLimit ?? {})) {
      const breached = trays.filter(({ limits }) =>
        limits.some(({ limitGrams, state }) => limitGrams === Number(kg) * 1000 && state === 'over'),
      );
      expect(breached, `${kg} kg`).toHaveLength(over);
    }
    expect(trays.map(({ heaviestBreachGrams }) => heaviestBreachGrams)).toEqual([7000, 7000, 11_340]);
  });

  test.each([
    [6299, 'under'],
    [6300, 'near'],
    [7000, 'near'],
    [7001, 'over'],
  ])('%i g against 7 kg, warned from 90 %%: %s', (massGrams, state) => {
    expect(answered([{ line: 'a', massGrams }]).mass.limits[0]).toMatchObject({ limitGrams: 7000, state });
  });

  test('a mass nobody stated can prove a limit exceeded, but never kept', () => {
    const { mass } = answered([
      { line: 'a', massGrams: 8000 },
      { line: 'b', massGrams: null },
    ]);
    expect(mass).toMatchObject({ exact: false, unknownLines: ['b'], heaviestBreachGrams: 7000 });
    expect(mass.limits.map(({ state }) => state)).toEqual(['over', 'notEstablished', 'notEstablished']);
  });
});

test('pieces are conserved: found + short = expected, whatever is over', () => {
  const lines = fc.array(
    fc.record({ expected: fc.integer({ min: 1, max: 9 }), found: fc.integer({ min: 0, max: 15 }) }),
    { minLength: 1, maxLength: 12 },
  );
  fc.assert(
    fc.property(lines, (rows) => {
      const { pieces, shortLines, surplusLines } = answered(
        rows.map((row, at) => ({ line: `L${at}`, ...row })),
      );
      const short = shortLines.reduce((sum, line) => sum + line.short, 0);
      const surplus = surplusLines.reduce((sum, line) => sum + line.surplus, 0);
      expect(pieces.found + short).toBe(pieces.expected);
      expect(pieces.found + surplus).toBe(rows.reduce((sum, { found }) => sum + found, 0));
      // 100 % is said only when nothing is short
      expect(pieces.percent === 100).toBe(short === 0);
    }),
  );
});

test('lines nobody has counted leave it open, and nothing found is assumed', () => {
  const answer = completeness(
    completenessInput.parse({
      lines: [lineOf({ line: 'a', found: null }), lineOf({ line: 'b' })],
      containerGrams: 0,
    }),
  );
  expect(answer).toMatchObject({
    outcome: 'notEstablished',
    missing: [{ path: ['lines', 0, 'found'] }],
    known: { pieces: { found: 1, expected: 2 }, maySend: { who: 'nobodyYet' } },
  });
});

test('a set of no lines is not whole: there is nothing to judge', () => {
  expect(completenessInput.safeParse({ lines: [], containerGrams: null }).success).toBe(false);
});

test('names given twice, minimum above expected and too many pieces are all named at once', () => {
  const lines = [
    lineOf({ line: 'a', minimum: 3, expected: 2 }),
    lineOf({ line: 'a' }),
    ...Array.from({ length: 4 }, (_, at) => lineOf({ line: `b${at}`, expected: 999 })),
  ];
  const problems = checkCompleteness(completenessInput.parse({ lines, containerGrams: null }));
  expect(problems.map(({ path, code }) => `${path.join('.')} ${code}`)).toEqual([
    'lines too-many-pieces',
    'lines.0.minimum minimum-above-expected',
    'lines.1.line duplicate',
  ]);
});
