import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { accountOf, PACK_OUTCOMES } from '@/lib/caseLife/account';
import { differencesOfCheck } from '@/lib/caseLife/check';
import { ACT_STAGES, LIFE_ACTS, LIFE_STAGES, type LifeFacts, mayDo, stageOf } from '@/lib/caseLife/life';
import { preferOwn, type WantedLine } from '@/lib/caseLife/list';
import { matchPicks, type Picked, stillToPick } from '@/lib/caseLife/match';

const set = (code: string, alike: string[] = []): WantedLine =>
  ({
    kind: 'set',
    setId: `set_${code}`,
    code,
    configurationName: 'A kind',
    role: 'open',
    alike: alike.map((one) => ({ setId: `set_${one}`, code: one })),
    readyAt: null,
  }) as WantedLine;
const pack = (stockId: string, itemId: string, quantity: number): WantedLine =>
  ({
    kind: 'pack',
    stockId,
    itemId,
    form: 'pouch',
    role: 'open',
    quantity,
    lot: null,
    useBy: null,
  }) as WantedLine;
const pickedSet = (code: string): Picked => ({
  id: `pick_${code}`,
  setId: `set_${code}`,
  stockId: null,
  itemId: null,
  quantity: 1,
});
const pickedPack = (id: string, stockId: string, itemId: string, quantity: number): Picked => ({
  id,
  setId: null,
  stockId,
  itemId,
  quantity,
});

describe('what is picked and what the list asks for', () => {
  it.each<[string, WantedLine[], Picked[], number[], string[]]>([
    ['the named copy', [set('a', ['b'])], [pickedSet('a')], [1], []],
    ['a copy alike', [set('a', ['b'])], [pickedSet('b')], [1], []],
    ['one copy too many', [set('a', ['b'])], [pickedSet('a'), pickedSet('b')], [1], ['pick_b']],
    ['a copy the engine did not name', [set('a')], [pickedSet('c')], [0], ['pick_c']],
    // c serves both lines, b the first alone: taking c for the first would leave a line unmet that can be met
    ['both lines met', [set('a', ['b', 'c']), set('d', ['c'])], [pickedSet('c'), pickedSet('b')], [1, 1], []],
    ['another lot of the item', [pack('k1', 'i', 2)], [pickedPack('p', 'k2', 'i', 2)], [2], []],
    ['more than is wanted', [pack('k1', 'i', 2)], [pickedPack('p', 'k1', 'i', 3)], [2], ['p']],
    ['another item', [pack('k1', 'i', 1)], [pickedPack('p', 'k1', 'other', 1)], [0], ['p']],
    [
      'one pick for two lots',
      [pack('k1', 'i', 1), pack('k2', 'i', 1)],
      [pickedPack('p', 'k1', 'i', 2)],
      [1, 1],
      [],
    ],
  ])('%s', (_why, list, picks, met, over) => {
    const matched = matchPicks(list, picks);
    expect(matched.lines.map(({ picked }) => picked)).toEqual(met);
    expect(matched.surplus.map(({ pickId }) => pickId)).toEqual(over);
  });

  const codes = ['a', 'b', 'c', 'd', 'e'];
  const listed = fc.uniqueArray(fc.constantFrom(...codes), { maxLength: 4 }).chain((named) =>
    fc.tuple(
      ...named.map((code) =>
        fc.subarray(codes).map((alike) =>
          set(
            code,
            alike.filter((one) => one !== code),
          ),
        ),
      ),
    ),
  );
  const packLines = fc.uniqueArray(
    fc.record({ at: fc.nat(3), item: fc.constantFrom('i', 'j'), quantity: fc.integer({ min: 1, max: 4 }) }),
    { maxLength: 3, selector: ({ at }) => at },
  );
  const picks = fc.record({
    sets: fc.subarray(codes),
    packs: fc.array(
      fc.record({
        at: fc.nat(3),
        item: fc.constantFrom('i', 'j', 'x'),
        quantity: fc.integer({ min: 1, max: 4 }),
      }),
      { maxLength: 5 },
    ),
  });

  it('put every picked piece to one line or call it surplus, and meet as many lines as can be', () => {
    fc.assert(
      fc.property(listed, packLines, picks, (sets, packs, picked) => {
        const list = [...sets, ...packs.map(({ at, item, quantity }) => pack(`k${at}`, item, quantity))];
        const all = [
          ...picked.sets.map(pickedSet),
          ...picked.packs.map(({ at, item, quantity }, n) => pickedPack(`p${n}`, `k${at}`, item, quantity)),
        ];
        const matched = matchPicks(list, all);
        const put = matched.lines.reduce((sum, line) => sum + line.picked, 0);
        const over = matched.surplus.reduce((sum, { quantity }) => sum + quantity, 0);
        expect(put + over).toBe(all.reduce((sum, { quantity }) => sum + quantity, 0));
        for (const { picked: some, wanted } of matched.lines) expect(some).toBeLessThanOrEqual(wanted);
        // brute force over the sets: no other way meets more lines
        expect(
          matched.lines.filter(({ line, picked: some }) => line.kind === 'set' && some === 1),
        ).toHaveLength(mostMet(sets, picked.sets));
        // a line of packs is short only where all that was picked of its item is put to lines of it
        for (const { line } of stillToPick(matched)) {
          if (line.kind !== 'pack') continue;
          const own = all.filter(({ itemId }) => itemId === line.itemId).map(({ id }) => id);
          expect(matched.surplus.filter(({ pickId }) => own.includes(pickId))).toEqual([]);
        }
      }),
    );
  });

  /** Tries every way to give sets to lines. */
  function mostMet(lines: readonly WantedLine[], sets: readonly string[]): number {
    const [line, ...rest] = lines;
    if (line?.kind !== 'set') return 0;
    const serves = sets.filter(
      (code) => line.setId === `set_${code}` || line.alike.some(({ setId }) => setId === `set_${code}`),
    );
    return Math.max(
      mostMet(rest, sets),
      ...serves.map(
        (code) =>
          1 +
          mostMet(
            rest,
            sets.filter((one) => one !== code),
          ),
      ),
    );
  }

  it('name the copy that is spoken for before one that serves alike, and keep all copies named', () => {
    fc.assert(
      fc.property(listed, fc.subarray(codes), (list, own) => {
        const after = preferOwn(list, own.map((code) => ({ setId: `set_${code}`, code })) as never);
        expect(after).toHaveLength(list.length);
        const named = after.map((line) => (line.kind === 'set' ? line.setId : ''));
        expect(new Set(named).size).toBe(named.length);
        after.forEach((line, at) => {
          const before = list[at];
          if (line.kind !== 'set' || before?.kind !== 'set') throw new Error('lines stay lines');
          const copies = (one: typeof line) => [one.setId, ...one.alike.map(({ setId }) => setId)].sort();
          expect(copies(line)).toEqual(copies(before));
        });
      }),
    );
  });
});

describe('the second check', () => {
  const heaps = fc.array(
    fc.record({
      key: fc.constantFrom('set_a', 'set_b', 'i lot 1', 'i lot 2'),
      quantity: fc.integer({ min: 1, max: 3 }),
    }),
    { maxLength: 6 },
  );
  const sum = (of: readonly { key: string; quantity: number }[], key: string) =>
    of.filter((one) => one.key === key).reduce((total, { quantity }) => total + quantity, 0);

  it('differs exactly where the pieces differ, whichever way they were told', () => {
    fc.assert(
      fc.property(heaps, heaps, (picked, seen) => {
        const differences = differencesOfCheck(picked, seen);
        for (const key of ['set_a', 'set_b', 'i lot 1', 'i lot 2']) {
          const one = differences.find((difference) => difference.key === key);
          if (sum(picked, key) === sum(seen, key)) expect(one).toBeUndefined();
          else expect(one).toEqual({ key, picked: sum(picked, key), seen: sum(seen, key) });
        }
        const turned = differencesOfCheck(seen, picked);
        expect(turned.map(({ key, picked: a, seen: b }) => ({ key, picked: b, seen: a }))).toEqual(
          differences,
        );
      }),
    );
  });
});

describe('what went out', () => {
  it('is what came back and what is still out', () => {
    const picks = fc.array(fc.record({ quantity: fc.integer({ min: 1, max: 5 }), issued: fc.boolean() }), {
      maxLength: 6,
    });
    fc.assert(
      fc.property(
        picks,
        fc.array(fc.tuple(fc.nat(5), fc.constantFrom(...PACK_OUTCOMES)), { maxLength: 20 }),
        (some, told) => {
          const all = some.map((pick, at) => ({ ...pick, id: String(at) }));
          const left = new Map(all.map(({ id, quantity }) => [id, quantity]));
          // one piece at a time, of what is out
          const returns = told.flatMap(([at, outcome]) => {
            const pick = all[at];
            if (!pick?.issued || (left.get(pick.id) ?? 0) === 0) return [];
            left.set(pick.id, (left.get(pick.id) ?? 0) - 1);
            return [{ pickId: pick.id, outcome, quantity: 1 }];
          });
          const account = accountOf(all, returns);
          const back = Object.values(account.back).reduce((total, pieces) => total + pieces, 0);
          expect(account.out).toBe(back + account.stillOut);
          expect(account.stillOut).toBe(
            all.filter(({ issued }) => issued).reduce((total, { id }) => total + (left.get(id) ?? 0), 0),
          );
        },
      ),
    );
  });
});

describe('the stages of a kit', () => {
  const facts: LifeFacts = {
    cancelled: false,
    begun: true,
    pickedAt: null,
    checkedAt: null,
    issuedAt: null,
    takenAt: null,
    standing: 0,
    issued: 0,
    stillOut: 0,
  };
  const at = '2026-01-14T08:00:00.000Z';
  it.each<[Partial<LifeFacts>, string, string]>([
    [{ begun: false }, 'notBegun', 'nothing was worked out'],
    [{ standing: 2 }, 'picking', 'things lie with it'],
    [{ standing: 2, pickedAt: at }, 'picked', 'somebody said so'],
    [{ standing: 2, pickedAt: at, checkedAt: at }, 'checked', 'another person said so'],
    [{ pickedAt: at, checkedAt: at, issuedAt: at, issued: 2, stillOut: 2 }, 'issued', 'it left the store'],
    [
      { pickedAt: at, checkedAt: at, issuedAt: at, takenAt: at, issued: 2, stillOut: 1 },
      'inTheatre',
      'one is out',
    ],
    [{ pickedAt: at, checkedAt: at, issuedAt: at, takenAt: at, issued: 2 }, 'back', 'none is out'],
    [
      { pickedAt: at, checkedAt: at, issuedAt: at, issued: 2 },
      'back',
      'it came back before it was taken over',
    ],
    [{ cancelled: true, standing: 1 }, 'toPutBack', 'something lies with the kit of a cancelled case'],
    [{ cancelled: true }, 'cancelled', 'nothing does'],
    [
      { cancelled: true, issuedAt: at, issued: 1, stillOut: 1 },
      'issued',
      'what is out is out, cancelled or not',
    ],
    [{ begun: false, issued: 1, stillOut: 1 }, 'inTheatre', 'a set sent by itself'],
    [{ begun: false, issued: 1 }, 'back', 'and received again'],
    [{ standing: 1, issued: 1, stillOut: 1 }, 'picking', 'a set sent by itself while the kit is fetched'],
  ])('%o is %s: %s', (some, stage, _why) => {
    expect(stageOf({ ...facts, ...some })).toBe(stage);
  });

  it('leave every act a stage, and let nothing of a kit that is out be picked or put back', () => {
    for (const act of LIFE_ACTS) expect(ACT_STAGES[act].length).toBeGreaterThan(0);
    for (const stage of ['issued', 'inTheatre', 'back', 'cancelled'] as const)
      for (const act of ['makeList', 'pick', 'putBack', 'finish', 'check', 'issue'] as const)
        expect(mayDo(stage, act)).toBe(false);
    for (const stage of LIFE_STAGES) expect(mayDo(stage, 'issue')).toBe(stage === 'checked');
  });
});
