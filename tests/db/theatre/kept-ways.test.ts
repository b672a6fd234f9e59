import { describe, expect, it } from 'vitest';
import { kitBasis } from '@/db/queries/caseKit';
import { THE_PROGRAM } from '@/db/reader';
import { plans } from '@/db/schema';
import type { Store } from '@/lib/kits/store';
import { type WaysToServe, waysToServe } from '@/lib/kits/waysToServe';
import { construct } from '@/lib/plans/plan';
import { plainDate } from '@/lib/quantities/plainDate';
import { demoDatabase } from '../../setup/database';

const CASE_DATE = plainDate.parse('2026-01-15');

async function world() {
  const db = await demoDatabase();
  const basis = await kitBasis({ ...db, reader: THE_PROGRAM }, null);
  const rows = await db.read.select({ body: plans.body }).from(plans);
  return { basis, constructs: rows.map(({ body }) => construct.parse(body)) };
}
type World = Awaited<ReturnType<typeof world>>;
type Basis = World['basis'];

/** Every plan's ways; with a catalogue that was never seen before, nothing can be at hand. */
const all = ({ constructs }: World, basis: Basis, caseDate = CASE_DATE): WaysToServe[] =>
  constructs.map((one) => waysToServe({ ...basis, construct: one, caseDate }));
const anew = (given: World, basis: Basis, caseDate = CASE_DATE) =>
  all(given, { ...basis, catalogue: [...basis.catalogue] }, caseDate);

const withStore = (basis: Basis, change: (store: Store) => Store): Basis => ({
  ...basis,
  store: change(structuredClone(basis.store)),
});
const sets = (change: (set: Store['sets'][number], at: number) => void) => (store: Store) => {
  store.sets.forEach(change);
  return store;
};

/** Each changes something that the ways rest on, and for some plan of the demo the answer with it. */
const CHANGES: Record<string, (basis: Basis) => Basis> = {
  'pieces go from the sets': (basis) =>
    withStore(
      basis,
      sets((set, at) => {
        if (at % 2 === 0) for (const heap of set.contents) heap.found = Math.max(0, heap.found - 1);
      }),
    ),
  'sets are held': (basis) =>
    withStore(
      basis,
      sets((set, at) => {
        if (at % 2 === 0) set.heldBecause = 'recall';
      }),
    ),
  'a held set holds what another held': (basis) =>
    withStore(basis, (store) => ({
      ...store,
      // the same content at the same place, in other sets
      sets: store.sets.map((set) => ({ ...set, id: `${set.id}-next` as typeof set.id })),
    })),
  'packs are gone, and those left have other ids': (basis) =>
    withStore(basis, (store) => ({
      ...store,
      packs: store.packs.map((pack) => ({ ...pack, id: `${pack.id}-next` as typeof pack.id })),
    })),
  'no packs at all': (basis) => withStore(basis, (store) => ({ ...store, packs: [] })),
  'no back-ups are wished for': (basis) => ({ ...basis, settings: { ...basis.settings, backUps: [] } }),
  'items are withdrawn': (basis) => ({
    ...basis,
    catalogue: basis.catalogue.map((item) =>
      item.kind === 'drillBit' ? { ...item, status: 'withdrawn' as const } : item,
    ),
  }),
};

describe('ways kept from before', () => {
  it.each(Object.entries(CHANGES))('are not those of another store: %s', async (_, change) => {
    const given = await world();
    const before = all(given, given.basis);
    const changed = change(given.basis);
    const expected = anew(given, changed);
    expect(expected).not.toEqual(before);
    expect(all(given, changed)).toEqual(expected);
    // and what was there before is there again
    expect(all(given, given.basis)).toEqual(before);
  });

  it('are not those of another day, on which packs and sets are past use-by', async () => {
    const given = await world();
    const before = all(given, given.basis);
    const later = plainDate.parse('2029-01-15');
    const expected = anew(given, given.basis, later);
    expect(expected).not.toEqual(before);
    expect(all(given, given.basis, later)).toEqual(expected);
  });

  it('stay where a set is at another step or promised: planning weighs that, not what could serve', async () => {
    const given = await world();
    const elsewhere = withStore(
      given.basis,
      sets((set) => {
        if (set.heldBecause !== null) return;
        set.step = 'washing';
        set.promisedTo = ['LM-26-0000'];
      }),
    );
    const usable = withStore(
      given.basis,
      sets((set) => {
        if (set.heldBecause === null) set.useBy = null;
      }),
    );
    expect(all(given, elsewhere)).toEqual(all(given, usable));
  });
});
