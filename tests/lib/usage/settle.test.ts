import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainDate } from '@/lib/quantities/plainDate';
import { accountOfUse, type PackSource, type SlotSource } from '@/lib/usage/account';
import { type AtHand, atHand } from '@/lib/usage/atHand';
import { openingBars } from '@/lib/usage/bars';
import { csvOfUse, jsonOfUse } from '@/lib/usage/export';
import { recordLines } from '@/lib/usage/lines';
import { moveActOf, slotStep } from '@/lib/usage/settle';
import { stateOfUse } from '@/lib/usage/state';
import { piece, takenBack } from './entries';

describe('pieces that leave a slot', () => {
  it.each([
    [
      'before any count they come off what it holds',
      { holding: 4, notFoundSince: 0, countedSince: false },
      2,
      { explained: 0, found: 0, fewer: 2 },
    ],
    [
      'more than it held are found first',
      { holding: 1, notFoundSince: 0, countedSince: false },
      3,
      { explained: 0, found: 2, fewer: 1 },
    ],
    [
      'after a count that missed them they explain it',
      { holding: 2, notFoundSince: 2, countedSince: true },
      2,
      { explained: 2, found: 0, fewer: 0 },
    ],
    [
      'after a count that missed one of two, the other is found',
      { holding: 3, notFoundSince: 1, countedSince: true },
      2,
      { explained: 1, found: 1, fewer: 0 },
    ],
    [
      'after a count that missed nothing, and a refill, the figure stands',
      { holding: 6, notFoundSince: 0, countedSince: true },
      1,
      { explained: 0, found: 1, fewer: 0 },
    ],
  ] as const)('%s', (_why, now, pieces, expected) => {
    expect(slotStep(now, pieces)).toEqual(expected);
  });

  it('never leave it with less than nothing, and are counted once', () => {
    fc.assert(
      fc.property(
        fc.nat(9),
        fc.nat(9),
        fc.boolean(),
        fc.integer({ min: 1, max: 9 }),
        (holding, missed, counted, pieces) => {
          const { explained, found, fewer } = slotStep(
            { holding, notFoundSince: counted ? missed : 0, countedSince: counted },
            pieces,
          );
          const after = holding + explained + found - pieces;
          expect(after).toBeGreaterThanOrEqual(0);
          expect(holding - fewer).toBe(after);
          if (counted) expect(after).toBe(holding);
        },
      ),
    );
  });

  it.each([
    ['implanted', false, 'implanted'],
    ['openedNotImplanted', false, 'wasted'],
    // an instrument that was opened is washed, and is no waste
    ['openedNotImplanted', true, null],
    ['droppedOrDamaged', true, 'wasted'],
    ['notFound', false, 'notFound'],
    ['returnedUnopened', false, null],
  ] as const)('%s, reprocessed %s: %s', (outcome, reusable, expected) => {
    expect(moveActOf(outcome, reusable)).toBe(expected);
  });
});

describe('what is not to be opened', () => {
  const day = plainDate.parse('2026-01-14');
  // good through the day printed, past it the day after: ISO 15223-1, use-by date (from memory)
  it.each([
    ['2026-01-14', false, false, []],
    ['2026-01-13', false, false, ['pastUseBy']],
    [null, true, true, ['held', 'recalled']],
  ] as const)('use-by %s, held %s, recalled %s', (useBy, held, recalled, expected) => {
    const useBys = [useBy === null ? null : plainDate.parse(useBy)];
    expect(openingBars({ useBys, held, recalled }, day)).toEqual(expected);
  });
});

describe('a scan at the table', () => {
  const slots: SlotSource[] = ['set_a', 'set_b'].flatMap((setId) => ({
    kind: 'slot',
    setId,
    lineId: 'line_a',
    itemId: 'item_a',
    reusable: false,
    recorded: 3,
    counted: null,
  }));
  const packs: (PackSource & { packId: string | null; stockId: string; lot: string | null })[] = [
    {
      kind: 'pack',
      pickId: 'pick_1',
      itemId: 'item_a',
      reusable: false,
      quantity: 1,
      returns: [],
      packId: null,
      stockId: 'stock_1',
      lot: 'L1',
    },
    {
      kind: 'pack',
      pickId: 'pick_2',
      itemId: 'item_b',
      reusable: false,
      quantity: 1,
      returns: [],
      packId: 'pack_2',
      stockId: 'stock_2',
      lot: null,
    },
  ];
  const scanned = (thing: object, entries: Parameters<typeof stateOfUse>[0] = [], from = slots) => {
    const accounts = accountOfUse([...from, ...packs], stateOfUse(entries));
    const at: AtHand<SlotSource, (typeof packs)[number]> = atHand(thing as never, {
      slots: from,
      packs,
      accounts,
    });
    return at.kind === 'pack'
      ? `${at.kind} ${at.pack.pickId} ${at.lot.kind}`
      : at.kind === 'slot'
        ? `${at.kind} ${at.lot.kind}`
        : at.kind;
  };
  const item = (itemId: string, lot: string | null) => ({ kind: 'item', itemId, lot, useBy: null });

  it.each([
    ['a pack of the lot issued', item('item_a', 'L1'), 'pack pick_1 read'],
    [
      'a lot that was not issued is not taken for one that was: it is a racked piece or none',
      item('item_a', 'L9'),
      'several',
    ],
    ['a pouch by its own label', { kind: 'pouch', packId: 'pack_2' }, 'pack pick_2 asIssued'],
    ['a shelf’s label', { kind: 'stock', stockId: 'stock_1' }, 'pack pick_1 asIssued'],
    ['a pack issued without a lot, and its lot read', item('item_b', 'L7'), 'pack pick_2 read'],
    ['a set leads to its lines', { kind: 'set', setId: 'set_b', packId: null }, 'set'],
    ['a set of another case', { kind: 'set', setId: 'set_z', packId: null }, 'notHere'],
    ['nothing of this case', item('item_z', null), 'notHere'],
  ] as const)('%s', (_why, thing, expected) => {
    expect(scanned(thing)).toBe(expected);
  });

  it('takes the racked piece where only one place has it, and says when all is recorded', () => {
    expect(scanned(item('item_a', 'L9'), [], slots.slice(0, 1))).toBe('slot read');
    expect(scanned({ kind: 'pouch', packId: 'pack_2' }, [piece({ pickId: 'pick_2' }, 'implanted')])).toBe(
      'recorded',
    );
  });
});

describe('the record as a file', () => {
  const entries = [
    piece({ setId: 'set_a', lineId: 'line_a' }, 'implanted', { note: '=2+2, "quoted"' }),
    piece({ pickId: 'pick_1' }, 'notFound'),
  ];
  const off = takenBack(entries[1] as never);
  const lines = recordLines({
    entries: [...entries, off].map((entry) => ({
      ...entry,
      enteredAt: entry.doneAt,
      by: 'Ruth Okonjo',
      pack: { number: 'P1-1', load: 'L1-1' },
    })),
    sets: [{ id: 'set_a', code: 'A-01' }],
    slots: [{ setId: 'set_a', lineId: 'line_a', reusable: false }],
    reasons: [],
    packs: [{ pickId: 'pick_1', lot: 'L1', useBy: '2027-01-01', reusable: false }],
    items: [{ itemId: 'item_a', code: 'A', name: 'A screw', gtin: '09521234000013', lengthUm: 16_000 }],
  });
  const head = {
    reference: 'LM-26-9RTB',
    caseDate: '2026-01-14',
    planVersion: 1,
    closed: null,
    differences: [],
    open: [],
    delays: [],
    exportedAt: '2026-01-14T10:00:00.000Z',
  };

  it('has one line an entry, with what is known of its lot, and what was taken back among them', () => {
    const [, first, second, end] = csvOfUse(head, lines).split('\r\n');
    // RFC 4180: a field with a comma or a quote is quoted, a quote is doubled; a formula is given as text
    expect(first).toContain(`"'=2+2, ""quoted"""`);
    expect(first).toContain('not available: set and load,,A-01,P1-1,L1-1');
    expect(second).toContain(
      'Not found during the case,1,A,A screw,09521234000013,16,,L1,as issued,2027-01-01',
    );
    expect(second).toContain('Ruth Okonjo');
    expect(end).toBe('');
    const parsed = JSON.parse(jsonOfUse(head, lines));
    expect(parsed).toMatchObject({ format: 'record-of-use/1', reference: 'LM-26-9RTB' });
    expect(parsed.lines.map(({ takenBack: back }: { takenBack: unknown }) => back !== null)).toEqual([
      false,
      true,
    ]);
  });

  it('names nobody but those who entered it', () => {
    const names = Object.keys(JSON.parse(jsonOfUse(head, lines))).concat(Object.keys(lines[0] ?? {}));
    expect(names.filter((name) => /patient|born|birth|nhs|hospitalNumber/i.test(name))).toEqual([]);
  });
});
