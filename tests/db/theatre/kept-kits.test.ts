import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kitBasis } from '@/db/queries/caseKit';
import { THE_PROGRAM } from '@/db/reader';
import { cases, plans } from '@/db/schema';
import type { CaseKit, KitQuestion } from '@/lib/kits/caseKit';
import { planKit } from '@/lib/kits/caseKit';
import { keptKit } from '@/lib/kits/keptKit';
import type { Store } from '@/lib/kits/store';
import { construct } from '@/lib/plans/plan';
import { plainDate } from '@/lib/quantities/plainDate';
import { demoDatabase } from '../../setup/database';

type Asked = Pick<KitQuestion, 'construct' | 'caseDate' | 'needBy'>;
type Basis = Awaited<ReturnType<typeof kitBasis>>;

interface World {
  basis: Basis;
  asked: Asked[];
}

async function world(): Promise<World> {
  const db = await demoDatabase();
  const bodies = new Set(
    (await db.read.select({ body: plans.body }).from(plans)).map(({ body }) => JSON.stringify(body)),
  );
  const [booked] = await db.read.select({ startsAt: cases.startsAt }).from(cases).limit(1);
  return {
    basis: await kitBasis({ ...db, reader: THE_PROGRAM }, null),
    asked: [...bodies].map((body) => ({
      construct: construct.parse(JSON.parse(body)),
      caseDate: plainDate.parse('2026-01-15'),
      needBy: booked?.startsAt ?? null,
    })),
  };
}

const question = (one: Asked, given: Basis): KitQuestion => ({
  ...given,
  ...one,
  solver: null,
  lengthCover: 'figure',
});
const keptOf = (one: Asked, given: Basis): Promise<CaseKit> => keptKit(question(one, given));
/** Worked out from the whole store, with a catalogue that was never seen before: nothing can be at hand. */
const freshOf = (one: Asked, given: Basis): Promise<CaseKit> =>
  planKit(question(one, { ...given, catalogue: [...given.catalogue] }));

const all = ({ asked }: World, of: typeof keptOf, given: Basis): Promise<CaseKit[]> =>
  Promise.all(asked.map((one) => of(one, given)));

/** What acts do to a store, one thing at a time. */
type Change =
  | { kind: 'found'; set: number; heap: number; found: number }
  | { kind: 'step'; set: number; step: Store['sets'][number]['step']; readyAt: string | null }
  | { kind: 'held'; set: number; because: string | null }
  | { kind: 'promised'; set: number; to: readonly string[]; here: boolean }
  | { kind: 'useBy'; set: number; useBy: string | null }
  | { kind: 'onKit'; set: number }
  | { kind: 'gone'; set: number }
  | { kind: 'mass'; set: number; grams: number | null }
  | { kind: 'pack'; pack: number; quantity: number }
  | { kind: 'packUseBy'; pack: number; useBy: string | null }
  | { kind: 'packHeld'; pack: number };

const at = fc.nat(10_000);
const day = fc.constantFrom('2025-12-01', '2026-01-14', '2026-01-15', '2026-06-30');
const change: fc.Arbitrary<Change> = fc.oneof(
  fc.record({ kind: fc.constant('found' as const), set: at, heap: at, found: fc.nat(3) }),
  fc.record({
    kind: fc.constant('step' as const),
    set: at,
    step: fc.constantFrom('inSterileStore' as const, 'washing' as const, 'inTheatre' as const),
    readyAt: fc.constantFrom(null, '2026-01-15T05:00:00.000Z', '2026-01-16T05:00:00.000Z'),
  }),
  fc.record({ kind: fc.constant('held' as const), set: at, because: fc.constantFrom(null, 'recall') }),
  fc.record({
    kind: fc.constant('promised' as const),
    set: at,
    to: fc.constantFrom([], ['LM-26-0001'], ['LM-26-0001', 'LM-26-0002']),
    here: fc.boolean(),
  }),
  fc.record({ kind: fc.constant('useBy' as const), set: at, useBy: fc.option(day) }),
  fc.record({ kind: fc.constant('onKit' as const), set: at }),
  fc.record({ kind: fc.constant('gone' as const), set: at }),
  fc.record({ kind: fc.constant('mass' as const), set: at, grams: fc.option(fc.nat(9_000)) }),
  fc.record({ kind: fc.constant('pack' as const), pack: at, quantity: fc.nat(4) }),
  fc.record({ kind: fc.constant('packUseBy' as const), pack: at, useBy: fc.option(day) }),
  fc.record({ kind: fc.constant('packHeld' as const), pack: at }),
);

function changed(before: Store, one: Change): Store {
  const store = structuredClone(before);
  const date = (text: string | null) => (text === null ? null : plainDate.parse(text));
  if ('pack' in one) {
    const pack = store.packs[one.pack % store.packs.length];
    if (!pack) return store;
    if (one.kind === 'pack') pack.quantity = one.quantity;
    else if (one.kind === 'packUseBy') pack.useBy = date(one.useBy);
    else pack.heldBecause = 'recall';
    return store;
  }
  const set = store.sets[one.set % store.sets.length];
  if (!set) return store;
  switch (one.kind) {
    case 'found': {
      const heap = set.contents[one.heap % Math.max(1, set.contents.length)];
      if (heap) heap.found = one.found;
      return store;
    }
    case 'step':
      set.step = one.step;
      set.readyAt = one.step === 'inSterileStore' ? null : one.readyAt;
      return store;
    case 'held':
      set.heldBecause = one.because;
      return store;
    case 'promised':
      set.promisedTo = [...one.to];
      if (one.here) set.promisedHere = true;
      else delete set.promisedHere;
      return store;
    case 'useBy':
      set.useBy = date(one.useBy);
      return store;
    case 'onKit':
      set.onKitOf = 'LM-26-0009';
      return store;
    case 'gone':
      store.sets = store.sets.filter((other) => other !== set);
      return store;
    case 'mass':
      set.massGrams = one.grams;
      return store;
  }
}

describe('kits kept from before', () => {
  it('are those of the whole store as it is, for every plan of the demo', async () => {
    const given = await world();
    const { basis, asked } = given;
    expect(asked.length).toBeGreaterThan(5);
    const [kept, fresh] = [await all(given, keptOf, basis), await all(given, freshOf, basis)];
    expect(kept).toEqual(fresh);
    // what is asked again is at hand, and is the very same
    const again = await all(given, keptOf, { ...basis, store: structuredClone(basis.store) });
    for (const [place, kit] of again.entries()) expect(kit).toBe(kept[place]);
  });

  it('equal fresh ones after any acts, and after each of them', async () => {
    const { basis, asked } = await world();
    let answered = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 5 }), at, async (changes, which) => {
        const one = asked[which % asked.length] as Asked;
        let store = basis.store;
        const first = await keptOf(one, basis);
        for (const next of changes) {
          store = changed(store, next);
          const kit = await keptOf(one, { ...basis, store });
          expect(kit).toEqual(await freshOf(one, { ...basis, store }));
          if (kit !== first) answered += 1;
        }
      }),
      { numRuns: 40 },
    );
    // some acts touched what the plan rests on, or nothing was tested
    expect(answered).toBeGreaterThan(10);
  });

  it('are not those of another day, other settings or another moment', async () => {
    const { basis, asked } = await world();
    const [one] = asked as [Asked, ...Asked[]];
    for (const other of [
      { ...one, caseDate: plainDate.parse('2029-01-15') },
      { ...one, needBy: '2026-01-14T06:00:00.000Z' },
    ])
      expect(await keptOf(other, basis)).toEqual(await freshOf(other, basis));
    const wishes = { ...basis, settings: { ...basis.settings, backUps: [] } };
    expect(await keptOf(one, wishes)).toEqual(await freshOf(one, wishes));
    const withdrawn = {
      ...basis,
      catalogue: basis.catalogue.map((item) =>
        item.kind === 'drillBit' ? { ...item, status: 'withdrawn' as const } : item,
      ),
    };
    expect(await keptOf(one, withdrawn)).toEqual(await freshOf(one, withdrawn));
    expect(await keptOf(one, withdrawn)).not.toEqual(await keptOf(one, basis));
  });
});
