import { describe, expect, it } from 'vitest';
import {
  type DelayFact,
  delayGroup,
  delayGroups,
  ownDelays,
  shareNotStated,
  wasteByNamedReason,
  writtenOffByReason,
} from '@/lib/costs/reasonGroups';
import { reasonTable } from '@/lib/costs/reasonTables';
import { plainDate } from '@/lib/quantities/plainDate';

let made = 0;
const delayed = (minutes: number | null, more: Partial<DelayFact> = {}): DelayFact => {
  made += 1;
  return {
    caseId: `case_${made}`,
    reference: `LM-${made}`,
    on: plainDate.parse('2026-01-14'),
    region: 'distalRadius',
    procedure: null,
    surgeonId: 'person_a',
    configurationIds: [],
    minutes,
    reasonId: 'reason_d1',
    step: null,
    ...more,
  };
};

const used = (
  reasonId: string | null,
  quantity: number,
  unitPence: number | null,
  configurationId = 'x',
) => ({
  item: 'screw',
  quantity,
  unitPence,
  wasted: { why: 'other' as const, code: 'damaged', reasonId },
  configurationId,
});
const implanted = { ...used(null, 4, 900), wasted: null };

describe('waste by the hospital’s own reasons', () => {
  const cases = [
    { caseId: 'case_a', used: [used('reason_w1', 2, 1_000), used(null, 1, 500), implanted] },
    { caseId: 'case_b', used: [used('reason_w1', 1, null, 'y'), used('reason_w2', 1, 5_000)] },
  ];

  it('adds up pieces and pence a reason, counts cases once, and says not stated last', () => {
    expect(wasteByNamedReason(cases)).toEqual([
      { reasonId: 'reason_w2', cases: 1, pieces: 1, pence: 5_000, unknown: 0 },
      { reasonId: 'reason_w1', cases: 2, pieces: 3, pence: 2_000, unknown: 1 },
      { reasonId: null, cases: 1, pieces: 1, pence: 500, unknown: 0 },
    ]);
    expect(wasteByNamedReason(cases, (id) => id === 'y')).toEqual([
      { reasonId: 'reason_w1', cases: 1, pieces: 1, pence: 0, unknown: 1 },
    ]);
  });

  it('loses no piece by grouping, and says which share has no reason', () => {
    const groups = wasteByNamedReason(cases);
    expect(groups.reduce((all, { pieces }) => all + pieces, 0)).toBe(5);
    expect(shareNotStated(groups)).toBe(0.2);
    expect(shareNotStated([])).toBeNull();
  });

  it('tells what was written off from the shelf apart, in no case', () => {
    const off = writtenOffByReason([
      { reasonId: null, quantity: 3, unitPence: 100 },
      { reasonId: 'reason_w4', quantity: 1, unitPence: 100 },
    ]);
    expect(off.map(({ reasonId, cases: its, pieces }) => [reasonId, its, pieces])).toEqual([
      ['reason_w4', 0, 1],
      [null, 0, 3],
    ]);
  });
});

describe('delay by the hospital’s own reasons', () => {
  it('has numpy’s quartiles, over stated minutes alone', () => {
    // numpy 2: numpy.percentile([5, 10, 10, 15, 20, 30, 45], [25, 50, 75]) = [10, 15, 25]
    const delays = [45, 5, 10, 20, 10, 30, 15, null].map((minutes) => delayed(minutes));
    expect(delayGroup('all', delays)).toMatchObject({
      delays: 8,
      cases: 8,
      stated: 7,
      minutes: 135,
      lowerMinutes: 10,
      medianMinutes: 15,
      upperMinutes: 25,
      noReason: 0,
    });
  });

  it('says nothing of what is usual where fewer than five are stated', () => {
    expect(
      delayGroup(
        'few',
        [5, 10, 15, 20, null].map((one) => delayed(one)),
      ).medianMinutes,
    ).toBeNull();
    expect(
      delayGroup(
        'five',
        [5, 10, 15, 20, 25].map((one) => delayed(one)),
      ).medianMinutes,
    ).toBe(15);
  });

  it('counts a delay with every set of its case, and once however often a set is named', () => {
    const groups = delayGroups(
      [delayed(10, { configurationIds: ['x', 'y', 'x'] })],
      (one) => one.configurationIds,
    );
    expect(groups.map(({ key, delays }) => [key, delays])).toEqual([
      ['x', 1],
      ['y', 1],
    ]);
  });

  it('shows a surgeon their own, and others only together and where they are enough', () => {
    const own = [delayed(10)];
    const four = [1, 2, 3, 4].map((at) => delayed(at, { surgeonId: at % 2 ? 'person_b' : 'person_c' }));
    expect(ownDelays([...own, ...four], 'person_a')).toMatchObject({ own: { delays: 1 }, others: null });
    const fifth = delayed(5, { surgeonId: 'person_b' });
    expect(ownDelays([...own, ...four, fifth], 'person_a').others).toMatchObject({ delays: 5, minutes: 15 });
    // five cases of one colleague would tell of that colleague
    const ofOne = [1, 2, 3, 4, 5].map((at) => delayed(at, { surgeonId: 'person_b' }));
    expect(ownDelays([...own, ...ofOne], 'person_a').others).toBeNull();
  });

  it('no table names a person, and what nobody gave a reason for is not stated', () => {
    const table = reasonTable('delaysByCase', {
      cases: [],
      delays: [delayed(10, { reasonId: null, step: 'during' })],
      writtenOff: [],
      reasons: [],
      nameOf: (id) => id,
    });
    expect(table.rows[0]?.slice(3)).toEqual([10, 'not stated', 'during the case']);
    expect(JSON.stringify(table)).not.toContain('person_');
  });
});
