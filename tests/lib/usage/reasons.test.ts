import { describe, expect, it } from 'vitest';
import type { Reason } from '@/lib/reasons/reason';
import { actFaults, type UseEntry, useAct } from '@/lib/usage/act';
import { csvOfUse, jsonOfUse } from '@/lib/usage/export';
import { delayLines, recordLines } from '@/lib/usage/lines';
import { stateOfUse } from '@/lib/usage/state';
import { delay, piece, reasonFor, takenBack } from './entries';

const SLOT = { setId: 'set_a', lineId: 'line_a' };
const REASONS: Reason[] = [
  { id: 'reason_w1', kind: 'waste', code: 'W1', words: 'another length was needed', inUse: true },
  { id: 'reason_w2', kind: 'waste', code: 'W2', words: 'fell', inUse: false },
  { id: 'reason_d1', kind: 'delay', code: 'D1', words: 'a set was not here in time', inUse: true },
];

describe('why something was wasted', () => {
  const dropped = piece(SLOT, 'droppedOrDamaged');

  it('is what was named last, in whatever order the entries arrive, and nothing where it was taken away again', () => {
    const [first, second] = [reasonFor(dropped, 'reason_w1'), reasonFor(dropped, 'reason_w2')];
    const named = (...entries: UseEntry[]) =>
      stateOfUse([dropped, ...entries]).pieces.map(({ reasonId }) => reasonId);
    expect(named()).toEqual([null]);
    expect(named(first, second)).toEqual(['reason_w2']);
    expect(named(second, first, second)).toEqual(['reason_w2']);
    expect(named(first, second, reasonFor(dropped, null))).toEqual([null]);
  });

  it('goes with its piece: one taken back has none, and the one entered instead is asked anew', () => {
    const again = piece(SLOT, 'openedNotImplanted');
    const { pieces } = stateOfUse([dropped, reasonFor(dropped, 'reason_w1'), takenBack(dropped), again]);
    expect(pieces.map(({ entryId, reasonId }) => [entryId, reasonId])).toEqual([[again.id, null]]);
  });

  it('leaves the program by its code and words, retired or not; without one it is not stated, and what is implanted has no such cell', () => {
    const implanted = piece(SLOT, 'implanted');
    const other = piece(SLOT, 'openedNotImplanted');
    const lines = recordLines({
      entries: [dropped, implanted, other, reasonFor(dropped, 'reason_w2')].map((entry) => ({
        ...entry,
        enteredAt: entry.doneAt,
        by: 'Ruth Okonjo',
        pack: null,
      })),
      sets: [{ id: 'set_a', code: 'A-01' }],
      slots: [{ ...SLOT, reusable: false }],
      packs: [],
      items: [],
      reasons: REASONS,
    });
    expect(lines.map(({ waste, reason }) => [waste, reason?.code ?? null])).toEqual([
      [true, 'W2'],
      [false, null],
      [true, null],
    ]);
    const head = {
      reference: 'LM-26-9RTB',
      caseDate: '2026-01-14',
      planVersion: null,
      closed: null,
      differences: [],
      open: [],
      delays: [],
      exportedAt: '2026-01-14T10:00:00.000Z',
    };
    const ends = csvOfUse(head, lines)
      .split('\r\n')
      .map((line) => line.split(',').slice(-2).join('|'));
    expect(ends.slice(0, 4)).toEqual(['reason code|reason for waste', 'W2|fell', '|', '|not stated']);
  });

  it('is asked of no instrument that is washed and used again', () => {
    const opened = piece(SLOT, 'openedNotImplanted');
    const [line] = recordLines({
      entries: [{ ...opened, enteredAt: opened.doneAt, by: '', pack: null }],
      sets: [],
      slots: [{ ...SLOT, reusable: true }],
      packs: [],
      items: [],
      reasons: REASONS,
    });
    expect(line?.waste).toBe(false);
  });
});

describe('a delay', () => {
  it('stands until it is taken back, and counts once however often it arrives', () => {
    const [one, other] = [delay({ minutes: 15 }), delay({ minutes: 5 })];
    expect(stateOfUse([one, other, one]).delays.map(({ minutes }) => minutes)).toEqual([15, 5]);
    expect(stateOfUse([one, other, takenBack(one)]).delays.map(({ minutes }) => minutes)).toEqual([5]);
    expect(stateOfUse([one]).pieces).toEqual([]);
  });

  it('says at least one thing, and minutes only whole from 1 to a day', () => {
    expect(actFaults(delay().act)).toEqual(['delayOfNothing']);
    expect(actFaults(delay({ note: 'The lift stood.' }).act)).toEqual([]);
    for (const minutes of [0, 1.5, 1_441, -3])
      expect(useAct.safeParse({ ...delay().act, minutes }).success).toBe(false);
    expect(useAct.safeParse({ ...delay().act, minutes: 1_440 }).success).toBe(true);
  });

  it('is told with its reason, step and thing; what is not stated is null in the file', () => {
    const entries = [
      delay({
        minutes: 25,
        reasonId: 'reason_d1' as never,
        step: 'layingUp',
        about: { kind: 'set', setId: 'set_a' as never },
      }),
      delay({ note: 'Unclear.' }),
    ].map((entry) => ({ ...entry, enteredAt: entry.doneAt, by: 'Ruth Okonjo', pack: null }));
    const delays = delayLines({ entries, reasons: REASONS }, (id) => (id === 'set_a' ? 'A-01' : id));
    expect(delays).toMatchObject([
      { minutes: 25, reason: { code: 'D1' }, step: 'layingUp', about: 'A-01' },
      { minutes: null, reason: null, step: null, about: null, note: 'Unclear.' },
    ]);
    const head = {
      reference: 'LM-26-9RTB',
      caseDate: '2026-01-14',
      planVersion: null,
      closed: null,
      differences: [],
      open: [],
      delays,
      exportedAt: '2026-01-14T10:00:00.000Z',
    };
    expect(JSON.parse(jsonOfUse(head, [])).delays).toHaveLength(2);
  });
});
