import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ReturnOutcome } from '@/lib/caseLife/account';
import { accountOfUse, freePacks, type PackSource, type SlotSource, wholeAccount } from '@/lib/usage/account';
import { actFaults, type UseEntry, useOutcome } from '@/lib/usage/act';
import { stateOfUse } from '@/lib/usage/state';
import { piece, takenBack } from './entries';

// What counts as what is the domain's own table of outcomes; conservation (pieces out = pieces back + implanted +
// discarded + not found + open) is arithmetic. Common practice, no source.

const SLOT = { setId: 'set_a', lineId: 'line_a' };
const slot = (recorded: number | null, more: Partial<SlotSource> = {}): SlotSource => ({
  kind: 'slot',
  ...SLOT,
  itemId: 'item_a',
  reusable: false,
  recorded,
  counted: null,
  ...more,
});
const pack = (quantity: number, returns: PackSource['returns'] = [], reusable = false): PackSource => ({
  kind: 'pack',
  pickId: 'pick_a',
  itemId: 'item_a',
  reusable,
  quantity,
  returns,
});
const PICK = { pickId: 'pick_a' };
const back = (outcome: ReturnOutcome, quantity = 1, id = `return_${outcome}`) => ({ id, outcome, quantity });

const accountOf = (source: SlotSource | PackSource, entries: readonly UseEntry[]) => {
  const [account] = accountOfUse([source], stateOfUse(entries));
  if (!account) throw new Error('one source has one account');
  return account;
};

describe('a slot', () => {
  it.each([
    ['what is not named stays in its set', slot(4), [], { out: 4, back: 4 }],
    [
      'each outcome takes a piece',
      slot(6),
      ['implanted', 'openedNotImplanted', 'droppedOrDamaged', 'notFound'],
      { back: 2, implanted: 1, discarded: 2, notFound: 1 },
    ],
    [
      'a slot nobody counted stays not established',
      slot(null),
      ['implanted'],
      { out: null, back: null, implanted: 1, beyond: 0 },
    ],
    [
      'more than there was is shown, and nothing goes below nought',
      slot(1),
      ['implanted', 'implanted'],
      { back: 0, beyond: 1 },
    ],
    [
      'an instrument that was opened goes back with its set',
      slot(2, { reusable: true }),
      ['openedNotImplanted'],
      { back: 2, discarded: 0 },
    ],
    [
      'an instrument that broke does not',
      slot(2, { reusable: true }),
      ['droppedOrDamaged'],
      { back: 1, discarded: 1 },
    ],
  ] as const)('%s', (_why, source, outcomes, expected) => {
    expect(
      accountOf(
        source,
        outcomes.map((outcome) => piece(SLOT, outcome)),
      ),
    ).toMatchObject(expected);
  });

  it.each([
    [3, 'comesOut'],
    [2, 'differs'],
    [null, 'notEstablished'],
  ] as const)('is held against the final count: %s is %s', (counted, verdict) => {
    expect(accountOf(slot(4, { counted }), [piece(SLOT, 'implanted')]).count).toEqual({ verdict, counted });
  });
});

describe('single packs', () => {
  it.each([
    ['nothing said: all open', pack(2), [], { open: 2, back: 0 }],
    ['implanted, and one left', pack(2), [piece(PICK, 'implanted')], { implanted: 1, open: 1 }],
    [
      'handed back unopened is back, and to be judged',
      pack(1),
      [piece(PICK, 'returnedUnopened')],
      { back: 1, toJudge: 1, open: 0 },
    ],
    [
      'judged sound: the same pack, not another',
      pack(1, [back('returnedUnopened')]),
      [piece(PICK, 'returnedUnopened')],
      { back: 1, toJudge: 0, open: 0 },
    ],
    [
      'judged damaged: the same pack, and discarded',
      pack(1, [back('damaged')]),
      [piece(PICK, 'returnedUnopened')],
      { back: 0, discarded: 1, toJudge: 0, open: 0 },
    ],
    [
      'damaged while another is still out: the one that is out',
      pack(2, [back('damaged')]),
      [piece(PICK, 'returnedUnopened')],
      { back: 1, toJudge: 1, discarded: 1, open: 0 },
    ],
    [
      'opened by the return alone: open until it is said whether implanted',
      pack(1, [back('opened')]),
      [],
      { open: 1, openedUnsaid: 1 },
    ],
    [
      'and made clear: one pack, implanted',
      pack(1, [back('opened', 1, 'return_r')]),
      [piece({ pickId: 'pick_a', returnId: 'return_r' }, 'implanted')],
      { implanted: 1, open: 0, openedUnsaid: 0 },
    ],
    [
      'another pack implanted beside it',
      pack(2, [back('opened')]),
      [piece(PICK, 'implanted')],
      { implanted: 1, open: 1, openedUnsaid: 1 },
    ],
    ['not found by the return', pack(1, [back('notFound')]), [], { notFound: 1, open: 0 }],
    [
      'an instrument opened is back, to be washed',
      pack(1, [], true),
      [piece(PICK, 'openedNotImplanted')],
      { back: 1, discarded: 0, open: 0 },
    ],
    ['and by the return as well', pack(1, [back('opened')], true), [], { back: 1, openedUnsaid: 0, open: 0 }],
  ] as const)('%s', (_why, source, entries, expected) => {
    expect(accountOf(source as PackSource, entries)).toMatchObject(expected);
  });

  it('has no more to say of a pack than was issued', () => {
    const full = accountOf(pack(2, [back('opened')]), [piece(PICK, 'implanted')]);
    expect(freePacks(full)).toBe(0);
    expect(freePacks(accountOf(pack(3, [back('opened')]), [piece(PICK, 'implanted')]))).toBe(1);
  });
});

describe('the state of a record', () => {
  it('does not depend on the order in which entries arrive, nor on how often', () => {
    const first = piece(SLOT, 'implanted');
    const second = piece(SLOT, 'droppedOrDamaged');
    const off = takenBack(first);
    const straight = stateOfUse([first, second, off]);
    expect(straight.pieces.map(({ entryId }) => entryId)).toEqual([second.id]);
    expect(stateOfUse([off, second, first, off, second])).toEqual(straight);
  });
});

const entryOf = fc.record({
  of: fc.constantFrom('slot' as const, 'pick' as const),
  outcome: fc.constantFrom(...useOutcome.options),
  quantity: fc.integer({ min: 1, max: 3 }),
  takenBack: fc.boolean(),
});

describe('conservation', () => {
  it('gives every piece out exactly one outcome, whatever is entered, returned and taken back', () => {
    fc.assert(
      fc.property(
        fc.array(entryOf, { maxLength: 12 }),
        fc.integer({ min: 0, max: 8 }),
        fc.integer({ min: 1, max: 6 }),
        fc.boolean(),
        fc.array(fc.constantFrom<ReturnOutcome>('returnedUnopened', 'opened', 'damaged', 'notFound'), {
          maxLength: 4,
        }),
        (drawn, recorded, issued, reusable, returned) => {
          const packs = pack(
            issued,
            returned.slice(0, issued).map((outcome, at) => back(outcome, 1, `return_${at}`)),
            reusable,
          );
          const slots = slot(recorded, { reusable });
          const entries: UseEntry[] = [];
          for (const { of, outcome, quantity, takenBack: off } of drawn) {
            const entry = piece(of === 'slot' ? SLOT : PICK, outcome, { quantity });
            // as the record takes them: what can't be is never entered, and of packs no more than are free
            if (entry.act.kind === 'piece' && actFaults(entry.act).length > 0) continue;
            if (of === 'pick' && quantity > freePacks(accountOf(packs, entries))) continue;
            entries.push(entry);
            if (off) entries.push(takenBack(entry));
          }
          const accounts = accountOfUse([slots, packs], stateOfUse(entries));
          for (const { out, back: home, implanted, discarded, notFound, open, beyond } of accounts) {
            expect((home ?? 0) + implanted + discarded + notFound + open).toBe((out ?? 0) + beyond);
            for (const figure of [home ?? 0, implanted, discarded, notFound, open, beyond])
              expect(figure).toBeGreaterThanOrEqual(0);
          }
          expect(accounts[1]?.beyond).toBe(0);
          const whole = wholeAccount(accounts);
          expect(whole.back + whole.implanted + whole.discarded + whole.notFound + whole.open).toBe(
            whole.out,
          );
        },
      ),
      { numRuns: 2_000, seed: 20260114 },
    );
  });
});
