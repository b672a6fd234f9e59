import { describe, expect, test } from 'vitest';
import type { CompletenessInput } from '@/lib/calculations/completeness/completeness';
import { type PackFacts, packGate } from '@/lib/packs/gate';
import { packMass } from '@/lib/packs/mass';
import { labelText, packNumber, packNumberOf, sequenceOf, sheetNumberOf } from '@/lib/packs/packNumber';
import { whyLabelIsOld, whySheetIsOld } from '@/lib/packs/printed';

const input = (massGrams: number | null, containerGrams: number | null = 2_000): CompletenessInput => ({
  lines: [
    {
      line: 'plate',
      item: 'plate',
      mustHaveClass: 1,
      expected: 1,
      minimum: 1,
      found: 1,
      massGrams,
      substitutes: [],
    },
  ],
  pouches: [],
  containerGrams,
  massLimitsGrams: [7000, 10_000, 11_340],
  warnAtPercent: 90,
});
const states = (mass: ReturnType<typeof packMass>) => mass.limits.map(({ state }) => state);

describe('mass', () => {
  test.each([
    // 11.34 kg is 25 lb with container: ANSI/AAMI ST77; 7 and 10 kg: common practice, no source
    { why: 'well below', piece: 2_000, states: ['under', 'under', 'under'] },
    { why: 'at nine tenths of 7 kg', piece: 4_300, states: ['near', 'under', 'under'] },
    { why: 'just below nine tenths', piece: 4_299, states: ['under', 'under', 'under'] },
    { why: 'at a limit: kept', piece: 5_000, states: ['near', 'under', 'under'] },
    { why: 'above 7 kg', piece: 5_001, states: ['over', 'under', 'under'] },
    { why: 'above all', piece: 9_341, states: ['over', 'over', 'over'] },
  ])('$why', ({ piece, states: expected }) => {
    expect(states(packMass(input(piece), null, 200))).toEqual(expected);
  });

  test('not stated is not nothing: nothing is kept by it, and the scale settles it', () => {
    const unknown = packMass(input(null), null, 200);
    expect(unknown).toMatchObject({ grams: null, exact: false, workedGrams: 2_000, unknownLines: ['plate'] });
    expect(states(unknown)).toEqual(['notEstablished', 'notEstablished', 'notEstablished']);
    expect(packMass(input(null), 6_400, 200)).toMatchObject({ grams: 6_400, scaleDiffersGrams: null });
    expect(packMass(input(1_000, null), null, 200).grams).toBeNull();
  });

  test('a scale that differs from the pieces is told both ways; against a floor only below it', () => {
    const differs = (piece: number | null, weighed: number) =>
      packMass(input(piece), weighed, 200).scaleDiffersGrams;
    expect([differs(3_000, 5_200), differs(3_000, 5_201), differs(3_000, 4_799)]).toEqual([null, 201, -201]);
    expect([differs(null, 9_000), differs(null, 1_799)]).toEqual([null, -201]);
  });
});

const facts = (change: Partial<PackFacts> = {}): PackFacts => ({
  bars: [],
  withdrawn: false,
  ask: { asks: 'nothing', approvers: [], oneCase: false, findings: [] },
  decision: null,
  newerVersion: null,
  mass: packMass(input(2_000), null, 200),
  overMass: 'needsReason',
  ...change,
});
const asked: PackFacts['ask'] = {
  asks: 'approvers',
  approvers: ['decontaminationLead'],
  oneCase: false,
  findings: [],
};

test.each<{ why: string; change: Partial<PackFacts>; may: boolean; kinds: string[] }>([
  { why: 'nothing against it', change: {}, may: true, kinds: [] },
  {
    why: 'not counted',
    change: { bars: [{ kind: 'notCounted', lines: 3 }] },
    may: false,
    kinds: ['counting'],
  },
  {
    why: 'two counts differ',
    change: { bars: [{ kind: 'disputed', lines: 1 }] },
    may: false,
    kinds: ['counting'],
  },
  { why: 'out of service', change: { withdrawn: true }, may: false, kinds: ['withdrawn'] },
  { why: 'short, and nobody decided', change: { ask: asked }, may: false, kinds: ['decisionNeeded'] },
  {
    why: 'short, and what was decided has lapsed',
    change: { ask: asked, decision: { lapses: ['caseOver'], open: [] } },
    may: false,
    kinds: ['decisionLapsed'],
  },
  {
    why: 'short, and more than was decided',
    change: { ask: asked, decision: { lapses: [], open: [{ kind: 'standIns' }] } },
    may: false,
    kinds: ['decisionOpen'],
  },
  {
    why: 'short, and decided',
    change: { ask: asked, decision: { lapses: [], open: [] } },
    may: true,
    kinds: ['goesShort'],
  },
  { why: 'follows an older version', change: { newerVersion: 4 }, may: true, kinds: ['newerVersion'] },
  {
    why: 'above the highest limit, where a reason is enough',
    change: { mass: packMass(input(9_341), null, 200) },
    may: true,
    kinds: ['massOver'],
  },
  {
    why: 'above the highest limit, where it stops',
    change: { mass: packMass(input(9_341), null, 200), overMass: 'stops' },
    may: false,
    kinds: ['massOver'],
  },
  {
    why: 'above a lower limit only',
    change: { mass: packMass(input(5_001), null, 200), overMass: 'stops' },
    may: true,
    kinds: ['massOver'],
  },
  {
    why: 'everything at once: none hides another',
    change: { withdrawn: true, ask: asked, bars: [{ kind: 'foreign', pieces: 1 }] },
    may: false,
    kinds: ['counting', 'withdrawn', 'decisionNeeded'],
  },
])('packing: $why', ({ change, may, kinds }) => {
  const gate = packGate(facts(change));
  expect(gate.mayPack).toBe(may);
  expect(gate.findings.map(({ finding }) => finding.kind)).toEqual(kinds);
});

test.each([
  { why: 'the newest copy', copy: 2, newestCopy: 2, state: 'closed', old: null },
  { why: 'the number alone, typed', copy: null, newestCopy: 2, state: 'sterile', old: null },
  { why: 'an older copy', copy: 1, newestCopy: 2, state: 'closed', old: 'oldLabel' },
  { why: 'a copy nobody printed', copy: 3, newestCopy: 2, state: 'closed', old: 'noSuchCopy' },
  { why: 'an opened pack', copy: 2, newestCopy: 2, state: 'opened', old: 'packOpened' },
  { why: 'a pack opened again', copy: 2, newestCopy: 2, state: 'undone', old: 'packUndone' },
] as const)('label: $why', ({ old, why: _why, ...given }) => {
  expect(whyLabelIsOld(given)).toBe(old);
});

test.each([
  { why: 'nothing changed', versionId: 'a', changed: null, withdrawn: false, old: null },
  {
    why: 'counted before it was printed',
    versionId: 'a',
    changed: '2026-01-14T06:00:00Z',
    withdrawn: false,
    old: null,
  },
  {
    why: 'counted since',
    versionId: 'a',
    changed: '2026-01-14T08:00:00Z',
    withdrawn: false,
    old: 'countedSince',
  },
  { why: 'refitted', versionId: 'b', changed: null, withdrawn: false, old: 'otherVersion' },
  { why: 'out of service', versionId: 'a', changed: null, withdrawn: true, old: 'withdrawn' },
] as const)('sheet: $why', ({ versionId, changed, withdrawn, old }) => {
  const printed = { versionId: 'a', at: '2026-01-14T07:00:00Z' };
  expect(whySheetIsOld({ printed, now: { versionId, contentsChangedAt: changed, withdrawn } })).toBe(old);
});

test('numbers: one wrong digit is caught, and what goes on a label reads back', () => {
  const number = packNumberOf(1_234);
  expect(packNumber.safeParse(number).success).toBe(true);
  for (let at = 1; at < 8; at += 1) {
    const digit = String((Number(number[at]) + 1) % 10);
    expect(packNumber.safeParse(number.slice(0, at) + digit + number.slice(at + 1)).success).toBe(false);
  }
  expect([sequenceOf(number), sequenceOf(sheetNumberOf(12))]).toEqual([1_234, 12]);
  expect(labelText(number, 2)).toBe(`${number}*2`);
});
