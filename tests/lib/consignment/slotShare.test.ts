import { describe, expect, it } from 'vitest';
import { type SlotMoveOfOwner, slotShares, type Whose } from '@/lib/consignment/slotShare';
import type { MoveAct } from '@/lib/pieces/move';

/** Rows of a slot in the order in which they happened, an hour apart. */
const story = (...rows: [MoveAct, number, Whose, (string | null)?, (string | null)?][]): SlotMoveOfOwner[] =>
  rows.map(([act, quantity, whose, caseId = null, reason = null], at) => ({
    seq: at + 1,
    way: act === 'refilled' || act === 'opening' || act === 'found' || act === 'explained' ? 'in' : 'out',
    act,
    quantity,
    whose,
    caseId,
    reason,
    lot: null,
    doneAt: new Date(Date.UTC(2026, 0, 5, at)).toISOString(),
  }));

const at = (hour: number) => Date.UTC(2026, 0, 5, hour);

describe('what of a slot was one owner’s', () => {
  it('is all that left it where nothing else lay there', () => {
    const { certain, uncertain, now } = slotShares(
      story(['refilled', 4, 'theirs'], ['implanted', 3, null, 'case_1']),
      at(0),
    );
    expect(certain).toEqual([{ seq: 2, knownBy: 'othersTooFew' }]);
    expect(uncertain).toEqual([]);
    expect(now).toEqual({ pieces: 1, lo: 1, hi: 1 });
  });

  it('is between a least and a most where others lay with it, and nobody is charged', () => {
    // 6 of ours, 4 of theirs, 8 used: at least 2 of them and at most 4 were theirs
    const { certain, uncertain } = slotShares(
      story(['refilled', 6, 'others'], ['refilled', 4, 'theirs'], ['implanted', 8, null, 'case_1']),
      at(1),
    );
    expect(certain).toEqual([]);
    expect(uncertain).toEqual([
      { caseId: 'case_1', outcome: 'implanted', pieces: 8, lo: 2, hi: 4, moves: [3] },
    ]);
  });

  it('is certain where its lot was read, and what was read leaves less for what was not', () => {
    const { certain, uncertain } = slotShares(
      story(
        ['refilled', 3, 'others'],
        ['refilled', 2, 'theirs'],
        ['implanted', 1, 'theirs', 'case_1'],
        ['implanted', 2, null, 'case_1'],
      ),
      at(1),
    );
    expect(certain).toEqual([{ seq: 3, knownBy: 'lotRead' }]);
    expect(uncertain).toEqual([
      { caseId: 'case_1', outcome: 'implanted', pieces: 2, lo: 0, hi: 1, moves: [4] },
    ]);
  });

  it('is nothing of what left before theirs came, or whose lot was another’s', () => {
    const { certain, uncertain } = slotShares(
      story(
        ['opening', 5, null],
        ['implanted', 1, null, 'case_0'],
        ['refilled', 2, 'theirs'],
        ['refilled', 2, 'others'],
        ['implanted', 1, 'others', 'case_1'],
      ),
      at(2),
    );
    expect(certain).toEqual([]);
    expect(uncertain).toEqual([]);
  });

  it('tells what was not found at a count, and pieces put aside, without charging them', () => {
    const { certain, uncertain } = slotShares(
      story(
        ['refilled', 4, 'theirs'],
        ['notFound', 1, null, 'case_1', 'bench'],
        ['setAside', 1, null, null, 'bent'],
        ['notFound', 1, null, 'case_2', 'theatre'],
      ),
      at(0),
    );
    expect(certain).toEqual([{ seq: 4, knownBy: 'othersTooFew' }]);
    expect(uncertain.map(({ outcome, lo, hi }) => ({ outcome, lo, hi }))).toEqual([
      { outcome: 'notFound', lo: 1, hi: 1 },
      { outcome: 'setAside', lo: 1, hi: 1 },
    ]);
  });

  it('does not tell twice what a late record of use explains', () => {
    const { certain, uncertain } = slotShares(
      story(
        ['refilled', 3, 'theirs'],
        ['notFound', 2, null, 'case_1', 'bench'],
        ['explained', 2, null, 'case_1'],
        ['implanted', 2, null, 'case_1'],
      ),
      at(0),
    );
    expect(certain).toEqual([{ seq: 4, knownBy: 'othersTooFew' }]);
    expect(uncertain).toEqual([]);
  });

  it('charges only what was read where the records contradict themselves', () => {
    const { certain, contradicted } = slotShares(
      story(
        ['refilled', 1, 'theirs'],
        ['implanted', 1, 'theirs', 'case_1'],
        ['implanted', 2, null, 'case_2'],
      ),
      at(0),
    );
    expect(contradicted).toBe(true);
    expect(certain).toEqual([{ seq: 2, knownBy: 'lotRead' }]);
  });
});
