import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LotAccount, lotAccounts, type MovedPieces, unaccounted } from '@/lib/consignment/account';
import { outcomeOf } from '@/lib/consignment/outcome';
import { stillToCome } from '@/lib/consignment/replacement';
import { type OwnedMove, waitingLines } from '@/lib/consignment/waiting';

const move = (seq: number, change: Partial<OwnedMove> = {}): OwnedMove => ({
  seq,
  act: 'implanted',
  reason: null,
  itemId: 'item_a',
  lot: 'L1',
  useBy: null,
  pieces: 1,
  caseId: 'case_1',
  doneOn: '2026-01-05',
  knownBy: 'heap',
  takenBack: false,
  charged: false,
  creditedAlready: false,
  ...change,
});

const told = (moves: OwnedMove[]) =>
  waitingLines(moves).map(({ way, moveSeq, pieces, outcome }) => `${way} ${moveSeq} ${pieces} ${outcome}`);

describe('what waits for a usage order', () => {
  it.each([
    { why: 'implanted', moves: [move(1)], lines: ['used 1 1 implanted'] },
    {
      why: 'each kind of waste by its own word',
      moves: [
        move(1, { act: 'wasted', reason: 'openedNotImplanted' }),
        move(2, { act: 'wasted', reason: 'damaged' }),
        move(3, { act: 'wasted', reason: 'pastUseBy', caseId: null }),
      ],
      lines: ['used 1 1 openedNotImplanted', 'used 2 1 droppedOrDamaged', 'used 3 1 pastUseBy'],
    },
    { why: 'an order has it already', moves: [move(1, { charged: true })], lines: [] },
    {
      why: 'corrected before any order had it: nothing happened',
      moves: [move(1, { takenBack: true })],
      lines: [],
    },
    {
      why: 'corrected after an order had it: the next one takes it back, and tells what is right',
      moves: [move(1, { takenBack: true, charged: true }), move(2, { act: 'wasted', reason: 'damaged' })],
      lines: ['takenBack 1 1 implanted', 'used 2 1 droppedOrDamaged'],
    },
    {
      why: 'taken back once',
      moves: [move(1, { takenBack: true, charged: true, creditedAlready: true })],
      lines: [],
    },
    {
      why: 'not found, told, and found again in part',
      moves: [move(1, { act: 'notFound', pieces: 3, charged: true }), move(2, { act: 'found', pieces: 2 })],
      lines: ['takenBack 2 2 foundAgain'],
    },
    {
      why: 'what turns up beyond what was told as gone takes nothing back',
      moves: [move(1, { act: 'notFound', pieces: 1, charged: true }), move(2, { act: 'found', pieces: 3 })],
      lines: ['takenBack 2 1 foundAgain'],
    },
    {
      why: 'found without ever having been told as gone',
      moves: [move(1, { act: 'found', pieces: 2 })],
      lines: [],
    },
    {
      why: 'found of another lot explains nothing',
      moves: [
        move(1, { act: 'notFound', charged: true }),
        move(2, { act: 'found', lot: 'L2' }),
        move(3, { act: 'found', itemId: 'item_b' }),
      ],
      lines: [],
    },
  ])('$why', ({ moves, lines }) => {
    expect(told(moves)).toEqual(lines);
  });

  it('is no use where pieces lie somewhere, or went back', () => {
    for (const act of [
      'received',
      'issued',
      'cameBack',
      'moved',
      'refilled',
      'sentBack',
      'takenOut',
    ] as const)
      expect(outcomeOf(act, null)).toBeNull();
  });

  it('never charges more than was used, less what was taken back, over any orders', () => {
    const anyMove = fc.record({
      act: fc.constantFrom('implanted', 'wasted', 'notFound', 'found'),
      pieces: fc.integer({ min: 1, max: 4 }),
      takenBackAfter: fc.constantFrom(null, 0, 1),
      orderAfter: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(anyMove, { maxLength: 12 }), (steps) => {
        const moves: OwnedMove[] = [];
        let balance = 0;
        const order = () => {
          for (const line of waitingLines(moves)) {
            balance += line.way === 'used' ? line.pieces : -line.pieces;
            const of = moves.find(({ seq }) => seq === line.moveSeq);
            if (of && line.way === 'used') of.charged = true;
            if (of && line.way === 'takenBack') of.creditedAlready = true;
          }
        };
        for (const [at, step] of steps.entries()) {
          moves.push(move(at + 1, { act: step.act as OwnedMove['act'], pieces: step.pieces }));
          // only a record of use is corrected
          const old = step.takenBackAfter === null ? undefined : moves[at - step.takenBackAfter];
          if (old && (old.act === 'implanted' || old.act === 'wasted')) old.takenBack = true;
          if (step.orderAfter) order();
        }
        order();
        order();
        const stands = moves.filter(({ takenBack }) => !takenBack);
        let gone = 0;
        let used = 0;
        for (const { act, pieces } of stands) {
          if (act === 'implanted' || act === 'wasted') used += pieces;
          if (act === 'notFound') gone += pieces;
          if (act === 'found') gone -= Math.min(gone, pieces);
        }
        expect(balance).toBe(used + gone);
      }),
      { numRuns: 300 },
    );
  });
});

describe('what is still to come in replacement', () => {
  const asked = (order: string, at: string, pieces: number) => ({
    kind: 'asked' as const,
    order,
    at,
    pieces,
  });
  const came = (at: string, pieces: number) => ({ kind: 'came' as const, at, pieces });

  it('is answered by what comes afterwards, the oldest order first', () => {
    const events = [came('2026-01-01', 9), asked('UO-1', '2026-01-02', 3), asked('UO-2', '2026-01-04', 2)];
    expect(stillToCome(events)).toEqual([
      { order: 'UO-1', pieces: 3 },
      { order: 'UO-2', pieces: 2 },
    ]);
    expect(stillToCome([...events, came('2026-01-05', 4)])).toEqual([{ order: 'UO-2', pieces: 1 }]);
    // what came between the two answers the first alone
    expect(stillToCome([...events, came('2026-01-03', 4)])).toEqual([{ order: 'UO-2', pieces: 2 }]);
  });

  it('ends as a person says that nothing more comes', () => {
    const events = [asked('UO-1', '2026-01-02', 3), came('2026-01-03', 1)];
    expect(stillToCome([...events, { kind: 'settled', at: '2026-01-04', order: 'UO-1' }])).toEqual([]);
  });
});

describe('the account of a lot', () => {
  const moved = (
    act: string,
    way: MovedPieces['way'],
    pieces: number,
    enteredWrongly = false,
  ): MovedPieces => ({
    ...{ itemId: 'item_a', lot: 'L1', act, way, pieces, enteredWrongly },
  });
  const account = (moves: MovedPieces[], shelf: number): LotAccount => {
    const [one] = lotAccounts(moves, [{ itemId: 'item_a', lot: 'L1', pieces: shelf }]);
    if (!one) throw new Error('there is a lot');
    return one;
  };

  it('has every piece that came somewhere', () => {
    const one = account(
      [
        moved('received', 'onto', 12),
        moved('sentBack', 'off', 1, true),
        moved('issued', 'off', 5),
        moved('cameBack', 'outOfCase', 1),
        moved('implanted', 'outOfCase', 2),
        moved('wasted', 'outOfCase', 1),
        moved('refilled', 'off', 2),
        moved('takenOut', 'onto', 1),
        moved('notFound', 'off', 2),
        moved('found', 'onto', 1),
        moved('sentBack', 'off', 1),
      ],
      // 12 − 1 − 5 + 1 − 2 + 1 − 2 + 1 − 1
      4,
    );
    expect(one).toMatchObject({
      received: 11,
      withCases: 1,
      intoSlots: 1,
      implanted: 2,
      wasted: 1,
      notFound: 1,
    });
    expect(unaccounted(one)).toBe(0);
  });

  it('says how many are unaccounted for', () => {
    expect(unaccounted(account([moved('received', 'onto', 3)], 2))).toBe(1);
  });
});
