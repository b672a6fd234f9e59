import { describe, expect, it } from 'vitest';
import { addressOf, readAsked } from '@/lib/emergency/asked';
import { freeFrom } from '@/lib/emergency/freeTheatre';
import { goneProblems } from '@/lib/emergency/gone';
import { emergencyOptions, type SetInReach } from '@/lib/emergency/options';
import { shortLines } from '@/lib/emergency/shortLines';
import type { ItemId, SetId, StockId } from '@/lib/identity/ids';
import type { Buildable } from '@/lib/kits/buildable';
import { readyBetween } from '@/lib/wording/emergency';

const NOW = '2026-01-15T02:10:00.000Z';
const id = (name: string) => `set_${name}` as SetId;

function inReach(name: string, more: Partial<SetInReach> = {}): SetInReach {
  return {
    id: id(name),
    code: name.toUpperCase(),
    readyMinutes: { p50: 0, p90: 0 },
    promisedTo: [],
    barred: false,
    ...more,
  };
}
const bySet = (...sets: SetInReach[]) => new Map(sets.map((set) => [set.id, set]));
const way = (parts: string[][], packs = 0, asWished = true) => ({
  parts: parts.map((part) => part.map(id)),
  packs: packs > 0 ? [{ stockId: 'stock_a' as StockId, quantity: packs }] : [],
  asWished,
});
const codes = (options: ReturnType<typeof emergencyOptions>) =>
  options.map(({ sets }) => sets.map(({ code }) => code).join('+'));

describe('the answers in the address', () => {
  const full =
    '/emergency?region=forearmShaft&side=right&plan=start_a1&by=2026-01-15T02:40:00.000Z&theatre=theatre_3&surgeon=person_a&gone=2026-01-15T02:05:00.000Z&take=SFL-05,GEN-01';

  it('come back as they were given, whatever was answered', () => {
    const query = Object.fromEntries(new URL(full, 'http://a').searchParams);
    expect(addressOf(readAsked(query))).toBe(full);
    expect(addressOf(readAsked({}))).toBe('/emergency');
  });

  it('leave unanswered what is no answer', () => {
    const asked = readAsked({
      region: 'tail',
      side: ['left', 'right'],
      plan: 'plan',
      by: 'soon',
      take: "SFL-05,' OR 1=1",
      theatre: 'place_x',
    });
    expect(asked).toEqual(readAsked({}));
  });
});

describe('what builds the construct', () => {
  it('puts what costs nobody anything first, then what another case was promised, then what is late', () => {
    const sets = bySet(
      inReach('promised', { promisedTo: ['LM-26-M4VQ'] }),
      inReach('soon', { readyMinutes: { p50: 40, p90: 55 } }),
      inReach('half', { readyMinutes: { p50: 50, p90: 90 } }),
      inReach('late', { readyMinutes: { p50: 200, p90: 260 } }),
      inReach('unknown', { readyMinutes: null }),
      inReach('pouched'),
    );
    const ways = [way([['late', 'promised', 'soon', 'half', 'unknown']]), way([['pouched']], 1)];
    const options = emergencyOptions({ ways }, sets, 60);
    expect(codes(options)).toEqual(['POUCHED', 'SOON', 'PROMISED', 'HALF', 'LATE', 'UNKNOWN']);
    expect(options.map(({ time }) => time)).toEqual(['now', 'inTime', 'now', 'perhaps', 'late', 'unknown']);
    expect(options[2]?.takesFrom).toEqual(['LM-26-M4VQ']);
  });

  it('names no set that can’t be had, and leaves out what only adds a tray', () => {
    const sets = bySet(inReach('a'), inReach('b'), inReach('held', { barred: true }));
    const ways = [way([['held'], ['b']]), way([['a'], ['b']]), way([['a']])];
    expect(codes(emergencyOptions({ ways }, sets, 60))).toEqual(['A']);
  });

  it('keeps the larger way where it alone has the back-ups', () => {
    const ways = [way([['a'], ['b']], 0, true), way([['a']], 0, false)];
    expect(codes(emergencyOptions({ ways }, bySet(inReach('a'), inReach('b')), 60))).toEqual(['A', 'A+B']);
  });

  it('waits for the latest of its sets, and takes no set twice', () => {
    const sets = bySet(inReach('a'), inReach('b', { readyMinutes: { p50: 20, p90: 35 } }));
    const [only, ...more] = emergencyOptions(
      {
        ways: [
          way([
            ['a', 'b'],
            ['a', 'b'],
          ]),
        ],
      },
      sets,
      30,
    );
    expect(more).toEqual([]);
    expect(only).toMatchObject({ time: 'perhaps', readyMinutes: { p50: 20, p90: 35 } });
  });

  it('says nothing of a time that nobody knows', () => {
    expect(readyBetween(null, NOW)).toBe('nobody can say when');
    expect(readyBetween({ p50: 0, p90: 0 }, NOW)).toBe('sterile now');
    expect(readyBetween({ p50: 20, p90: 50 }, NOW)).toBe('half of the time by 02:30, nine in ten by 03:00');
  });
});

describe('whether what is short matters', () => {
  const [bit, limiter, clamp] = ['item_bit', 'item_limiter', 'item_clamp'] as ItemId[] as [
    ItemId,
    ItemId,
    ItemId,
  ];
  const contents = [
    { itemId: bit, found: 1, expected: 2, mustHaveClass: 1 as const },
    { itemId: limiter, found: 0, expected: 1, mustHaveClass: 1 as const },
    { itemId: clamp, found: 2, expected: 2, mustHaveClass: 3 as const },
  ];
  const built = (more: Partial<Buildable>): Buildable => ({
    outcome: 'no',
    steps: 2,
    stepsPossible: 1,
    blocked: [],
    open: [],
    ...more,
  });

  it('is told line by line: what stops a step, and what does not', () => {
    const blocked: Buildable['blocked'] = [
      { kind: 'chain', needId: 'n', chain: 'driving', steps: ['P1/S1'], wouldClose: [[limiter]] },
    ];
    expect(shortLines(contents, built({ blocked }))).toEqual([
      { itemId: limiter, short: 1, mustHaveClass: 1, matters: { kind: 'stops', steps: ['P1/S1'] } },
      { itemId: bit, short: 1, mustHaveClass: 1, matters: { kind: 'no' } },
    ]);
  });

  it('is not established where a value is missing, and not known without a plan', () => {
    const open = [{ needId: 'n', steps: ['P1/S1'] }];
    const kinds = (lines: ReturnType<typeof shortLines>) => lines.map(({ matters }) => matters.kind);
    expect(kinds(shortLines(contents, built({ open })))).toEqual(['notEstablished', 'notEstablished']);
    expect(kinds(shortLines(contents, null))).toEqual(['notKnown', 'notKnown']);
  });
});

describe('theatre and times', () => {
  const use = (from: string, to: string) => ({
    startsAt: `2026-01-15T${from}:00.000Z`,
    endsAt: `2026-01-15T${to}:00.000Z`,
  });

  it('finds the first gap that is long enough, half open at both ends', () => {
    const uses = [use('05:00', '06:00'), use('03:00', '04:00')];
    expect(freeFrom(uses, '2026-01-15T02:00:00.000Z', 60)).toBe('2026-01-15T02:00:00.000Z');
    expect(freeFrom(uses, '2026-01-15T02:00:00.000Z', 61)).toBe('2026-01-15T06:00:00.000Z');
    expect(freeFrom(uses, '2026-01-15T03:30:00.000Z', 60)).toBe('2026-01-15T04:00:00.000Z');
    expect(freeFrom([], NOW, 120)).toBe(NOW);
  });

  it('takes no time still to come for gone, and none that nobody remembers', () => {
    expect(goneProblems('2026-01-15T02:11:00.000Z', NOW)).toMatchObject([{ code: 'in-the-future' }]);
    expect(goneProblems('2026-01-14T14:00:00.000Z', NOW)).toMatchObject([{ code: 'too-long-ago' }]);
    expect(goneProblems('2026-01-15T01:50:00.000Z', NOW)).toEqual([]);
  });
});
