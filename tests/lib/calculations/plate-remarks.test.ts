import { describe, expect, test } from 'vitest';
import { plateRemarks } from '@/lib/calculations/plateRemarks/plateRemarks';
import { checkPlateRemarks, plateRemarksInput, REMARKS } from '@/lib/calculations/plateRemarks/schema';

interface Hole {
  hole: string;
  alongMm: number;
  fill?: string;
  cortices?: 1 | 2 | null;
  threadMm?: number | null;
  tip?: string | null;
}

const screw = (hole: string, alongMm: number, more: Partial<Hole> = {}): Hole => ({
  hole,
  alongMm,
  fill: 'locking',
  cortices: 2,
  threadMm: 3.5,
  tip: 'selfTapping',
  ...more,
});
const empty = (hole: string, alongMm: number): Hole => ({ hole, alongMm, fill: 'empty' });

/** A plate of 120 mm with ten holes 12 mm apart; the fracture from 50 to 70 mm. */
const bridging = {
  plate: 'P1',
  plateLengthMm: 120 as number | null,
  zone: { fromMm: 50, toMm: 70 } as { fromMm: number; toMm: number } | null,
  principle: 'bridging',
  holes: [
    screw('S1', 6),
    empty('S2', 18),
    screw('S3', 30),
    empty('S4', 42),
    empty('S5', 54),
    empty('S6', 66),
    empty('S7', 78),
    screw('S8', 90),
    empty('S9', 102),
    screw('S10', 114),
  ],
};

function remarksOn(plate: object, more: object = {}) {
  const input = plateRemarksInput.parse({ bone: 'normal', plates: [plate], ...more });
  const answer = plateRemarks(input);
  if (answer.outcome !== 'answered') throw new Error('not established');
  return answer.answer.remarks;
}
const one = (plate: object, remark: string, more: object = {}) =>
  remarksOn(plate, more).filter((row) => row.remark === remark);

// figures worked by hand for the plate above; ranges: Gautier & Sommer 2003, Stoffel 2003, both from memory
test('the figures of a bridging plate, worked by hand', () => {
  const rows = remarksOn(bridging).map(({ remark, fragment, figure, outcome }) => [
    remark,
    fragment,
    figure,
    outcome,
  ]);
  expect(rows).toEqual([
    ['span-ratio', null, 120 / 20, 'within'],
    ['screw-density', null, 4 / 10, 'within'],
    ['fragment-screws', 'shaftEnd', 2, 'within'],
    ['fragment-cortices', 'shaftEnd', 4, 'within'],
    ['fragment-screws', 'farEnd', 2, 'within'],
    ['fragment-cortices', 'farEnd', 4, 'within'],
    ['free-holes-over-zone', null, 2, 'within'],
  ]);
});

describe('outside', () => {
  test.each([
    ['a plate shorter than twice the zone', 'span-ratio', { ...bridging, zone: { fromMm: 20, toMm: 100 } }],
    [
      'every hole filled',
      'screw-density',
      { ...bridging, holes: bridging.holes.map((hole) => screw(hole.hole, hole.alongMm)) },
    ],
    ['one screw in a fragment', 'fragment-screws', { ...bridging, holes: bridging.holes.slice(2) }],
    [
      'one cortex each',
      'fragment-cortices',
      {
        ...bridging,
        holes: bridging.holes.map((hole) => (hole.fill === 'locking' ? { ...hole, cortices: 1 } : hole)),
      },
    ],
    ['no free hole over the zone', 'free-holes-over-zone', { ...bridging, zone: { fromMm: 55, toMm: 65 } }],
  ])('%s', (_why, remark, plate) => {
    expect(one(plate, remark).map(({ outcome }) => outcome)).toContain('outside');
  });

  test('a density of exactly one half is within', () => {
    const half = { ...bridging, holes: [screw('S1', 6), empty('S2', 18)] };
    expect(one(half, 'screw-density')).toMatchObject([{ figure: 0.5, outcome: 'within' }]);
  });
});

test('a principle without a published range shows the figure alone', () => {
  expect(one({ ...bridging, principle: 'buttress' }, 'span-ratio')).toMatchObject([
    { figure: 6, range: null, outcome: 'figure' },
  ]);
  expect(one({ ...bridging, principle: null }, 'span-ratio')).toMatchObject([{ outcome: 'figure' }]);
});

test('nothing is guessed: no zone, no plate length, a hole not decided, cortices not said', () => {
  expect(one({ ...bridging, zone: null }, 'span-ratio')).toMatchObject([
    { outcome: 'notEstablished', figure: null, missing: ['the fracture zone'] },
  ]);
  expect(one({ ...bridging, plateLengthMm: null }, 'span-ratio')).toMatchObject([
    { outcome: 'notEstablished', missing: ['the plate’s length'] },
  ]);
  const undecided = {
    ...bridging,
    holes: [...bridging.holes.slice(1), { hole: 'S1', alongMm: 6, fill: 'notDecided' }],
  };
  expect(one(undecided, 'screw-density')).toMatchObject([
    { outcome: 'notEstablished', missing: ['what goes in S1'] },
  ]);
  const unsaid = { ...bridging, holes: [screw('S1', 6, { cortices: null })] };
  expect(one(unsaid, 'fragment-cortices')[0]).toMatchObject({
    outcome: 'notEstablished',
    missing: ['cortices of S1'],
  });
});

test('a zone marked as a line has no length to divide by', () => {
  const [row] = one({ ...bridging, zone: { fromMm: 60, toMm: 60 } }, 'span-ratio');
  expect(row).toMatchObject({ outcome: 'notEstablished', figure: null });
});

// common practice, no source
describe('near the fracture line', () => {
  const at = (alongMm: number, more: Partial<Hole> = {}) => ({
    ...bridging,
    holes: [screw('S1', alongMm, more)],
  });
  test.each([
    ['exactly one diameter away', at(46.5), 0],
    ['a hundredth nearer', at(46.51), 1],
    ['beyond the far line, nearer than a diameter', at(72), 1],
    ['a lag screw crosses it', at(49, { fill: 'lag' }), 0],
    ['far away', at(6), 0],
  ])('%s', (_why, plate, count) => {
    expect(one(plate, 'near-fracture-line').filter(({ outcome }) => outcome === 'note')).toHaveLength(count);
  });
  test('thread not stated: not established near it, and no matter far from it', () => {
    expect(one(at(48, { threadMm: null }), 'near-fracture-line')).toMatchObject([
      { outcome: 'notEstablished' },
    ]);
    expect(one(at(6, { threadMm: null }), 'near-fracture-line')).toEqual([]);
  });
});

describe('poor bone and one cortex', () => {
  const plate = (more: Partial<Hole>) => ({ ...bridging, holes: [screw('S1', 6, more)] });
  const drilling = { cortices: 1, tip: 'selfDrillingSelfTapping' } as const;
  test.each([
    ['self-drilling, one cortex, poor bone', drilling, 'poor', ['note']],
    ['the same in normal bone', drilling, 'normal', []],
    ['the same where bone is not stated', drilling, 'notStated', []],
    ['through both cortices', { ...drilling, cortices: 2 } as const, 'poor', []],
    ['self-tapping', { ...drilling, tip: 'selfTapping' } as const, 'poor', []],
    ['tip not stated', { ...drilling, tip: null }, 'poor', ['notEstablished']],
  ])('%s', (_why, more, bone, outcomes) => {
    expect(one(plate(more), 'poor-bone-one-cortex', { bone }).map(({ outcome }) => outcome)).toEqual(
      outcomes,
    );
  });
});

// common practice, no source
test('plain before locking: only where both are in one main fragment', () => {
  const mixed = { ...bridging, holes: [screw('S1', 6), screw('S3', 30, { fill: 'plain' }), screw('S8', 90)] };
  expect(one(mixed, 'plain-before-locking')).toMatchObject([{ fragment: 'shaftEnd', holes: ['S3', 'S1'] }]);
  const apart = { ...bridging, holes: [screw('S1', 6), screw('S8', 90, { fill: 'plain' })] };
  expect(one(apart, 'plain-before-locking')).toEqual([]);
});

test('local policy can switch off each of them', () => {
  expect(remarksOn(bridging, { bone: 'poor', off: [...REMARKS] })).toEqual([]);
});

test('every remark is advisory, has a source, and orders nothing', () => {
  for (const row of remarksOn({ ...bridging, zone: { fromMm: 28, toMm: 92 } }, { bone: 'poor' })) {
    expect(row.advisory).toBe(true);
    expect(row.source).not.toBe('');
    expect(row.sentence).not.toMatch(/\b(must|should|use|add|replace|choose|change)\b/i);
  }
});

test('a zone that ends before it begins, a hole off the plate and a hole given twice are all named', () => {
  const input = plateRemarksInput.parse({
    bone: 'normal',
    plates: [{ ...bridging, zone: { fromMm: 70, toMm: 50 }, holes: [screw('S1', 6), screw('S1', 130)] }],
  });
  expect(checkPlateRemarks(input).map(({ path, code }) => `${path.join('.')} ${code}`)).toEqual([
    'plates.0.zone.toMm zone-backwards',
    'plates.0.holes.1.hole duplicate',
    'plates.0.holes.1.alongMm off-the-plate',
  ]);
});
