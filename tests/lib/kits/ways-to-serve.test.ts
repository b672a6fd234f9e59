import { expect, it } from 'vitest';
import { DEFAULT_KIT_SETTINGS } from '@/lib/kits/settings';
import type { StoredPack, StoredSet } from '@/lib/kits/store';
import { waysToServe } from '@/lib/kits/waysToServe';
import { plainDate } from '@/lib/quantities/plainDate';
import { CASE_DATE, engine, packOf, planOf, setOf, WORLD } from '../../fixtures/kitWorld';

const WHOLE = { PR: 1, B25: 2, S25: 1, DRIVER: 1, HANDLE: 1, POWER: 1, GAUGE: 1, C16: 2, C18: 2 };
const PLAN = planOf('PR', 'right', { S1: ['neutral', 16] });

function served(sets: StoredSet[], packs: StoredPack[] = [], plan = PLAN) {
  const { outcome, ways } = waysToServe({
    construct: plan,
    caseDate: CASE_DATE,
    store: { sets, packs },
    catalogue: WORLD,
    engine,
    settings: DEFAULT_KIT_SETTINGS,
  });
  const code = (id: string) => sets.find((set) => set.id === id)?.code ?? id;
  return {
    outcome,
    ways: ways.map(({ parts, packs: taken, asWished }) => ({
      parts: parts.map((part) => part.map(code)),
      packs: taken.length,
      asWished,
    })),
  };
}

it('a set that is short serves a plan that does not need the piece, and no other', () => {
  const { C18: _gone, ...short } = WHOLE;
  const sets = [setOf('A', WHOLE), setOf('B', short)];
  expect(served(sets).ways[0]?.parts).toEqual([['A', 'B']]);
  const longer = planOf('PR', 'right', { S1: ['neutral', 18] });
  expect(served(sets, [], longer).ways[0]?.parts).toEqual([['A']]);
});

it('a set comes in from whatever step it is at, but held, short for another or past use-by in none', () => {
  const sets = [
    setOf('A', WHOLE, { step: 'washing', readyAt: null }),
    setOf('B', WHOLE, { step: 'held', heldBecause: 'recall' }),
    setOf('C', WHOLE, { shortFor: { reference: 'LM-26-0000' } }),
    setOf('D', WHOLE, { useBy: plainDate.parse('2026-01-13') }),
    // it is packed anew before then
    setOf('E', WHOLE, { step: 'onBench', useBy: plainDate.parse('2026-01-13') }),
  ];
  expect(served(sets).ways[0]?.parts.map((part) => [...part].sort())).toEqual([['A', 'E']]);
});

it('where a back-up can be had there are ways with it first, and ways without', () => {
  const sets = [setOf('A', WHOLE), setOf('B', { ...WHOLE, B25: 1 })];
  expect(served(sets)).toEqual({
    outcome: 'canBeMet',
    ways: [
      { parts: [['A']], packs: 0, asWished: true },
      { parts: [['A', 'B']], packs: 0, asWished: false },
    ],
  });
});

it('a piece that no set has comes from a pouch, and what is nowhere is short', () => {
  const { GAUGE: _gone, ...short } = WHOLE;
  const withPouch = served([setOf('A', short)], [packOf('GAUGE')]);
  expect(withPouch.ways[0]).toMatchObject({ parts: [['A']], packs: 1 });
  expect(served([setOf('A', short)])).toEqual({ outcome: 'short', ways: [] });
});

it('says what everything together is short of, by piece and number, and which set has it out of reach', () => {
  const ask = (
    sets: StoredSet[],
    plan = planOf('PR', 'right', { S1: ['neutral', 16], S2: ['neutral', 16] }),
  ) =>
    waysToServe({
      construct: plan,
      caseDate: CASE_DATE,
      store: { sets, packs: [] },
      catalogue: WORLD,
      engine,
      settings: DEFAULT_KIT_SETTINGS,
    });
  const { C16: _no, GAUGE: _gone, ...less } = WHOLE;
  const held = { ...setOf('B', WHOLE), heldBecause: 'recall' };
  const short = ask([setOf('A', less), held]);
  expect(short.outcome).toBe('short');
  const names = (id: string) => WORLD.find((item) => item.id === id)?.code ?? id;
  const said = short.missing.map((one) =>
    one.kind === 'pieces'
      ? `${one.pieces} × ${one.anyOf.map(names).join(' or ')}`
      : one.anyOf
          .map((way) => way.map(({ itemId, pieces }) => `${pieces} × ${names(itemId)}`).join(' and '))
          .join(' or '),
  );
  expect(said.sort()).toEqual(['1 × GAUGE', '2 × C16']);
  expect(short.outOfReach).toEqual(['B']);
  expect(ask([setOf('A', WHOLE)])).toMatchObject({ outcome: 'canBeMet', missing: [], outOfReach: [] });
});
