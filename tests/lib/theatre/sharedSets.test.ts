import { describe, expect, it } from 'vitest';
import { type CaseWithSets, sharedSets } from '@/lib/theatre/sharedSets';

const night: CaseWithSets = {
  id: 'n',
  reference: 'LM-26-NGHT',
  startsAt: '2026-01-15T02:10:00Z',
  sets: ['A-05', 'C-01'],
};
const morning: CaseWithSets = {
  id: 'm',
  reference: 'LM-26-MRNG',
  startsAt: '2026-01-15T08:30:00Z',
  sets: ['A-05'],
};
const nextDay: CaseWithSets = {
  id: 'd',
  reference: 'LM-26-NEXT',
  startsAt: '2026-01-16T08:30:00Z',
  sets: ['A-05'],
};

describe('sets that two cases count on', () => {
  it('are named for both, with the other case and its time', () => {
    const shared = sharedSets([morning, night], 12);
    expect(shared.get('n')).toEqual([
      { code: 'A-05', with: [{ reference: 'LM-26-MRNG', startsAt: morning.startsAt }] },
    ]);
    expect(shared.get('m')).toEqual([
      { code: 'A-05', with: [{ reference: 'LM-26-NGHT', startsAt: night.startsAt }] },
    ]);
  });

  it('are not named when the set has time to come round', () => {
    expect(sharedSets([morning, nextDay], 12).get('m')).toEqual([]);
    // exactly as long apart as the set takes
    expect(sharedSets([morning, nextDay], 24).get('m')).toEqual([]);
    expect(sharedSets([morning, nextDay], 24.01).get('m')).toHaveLength(1);
  });

  it('say nothing of one case alone, nor of sets nobody else needs', () => {
    expect(sharedSets([night], 12).get('n')).toEqual([]);
    expect(sharedSets([], 12).size).toBe(0);
  });

  it('answer the same in any order of the cases', () => {
    const all = [night, morning, nextDay];
    expect(sharedSets([...all].reverse(), 30)).toEqual(sharedSets(all, 30));
  });
});
