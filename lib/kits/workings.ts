import type { z } from 'zod';
import type { buildableInput } from '../calculations/buildable/schema';
import type { fewestTraysInput } from '../calculations/fewestTrays/schema';
import { NOTHING_NEEDED } from '../calculations/fewestTrays/schema';
import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import type { PlainDate } from '../quantities/plainDate';
import { availableFor } from './availability';
import { type CatalogueIndex, indexCatalogue } from './catalogueIndex';
import { coverOfStore, type LineRole, type StoreProblem } from './coverOfStore';
import type { CaseKit } from './kit';
import type { Candidate, ChainNeed } from './need';
import type { KitSettings } from './settings';
import type { Store } from './store';

export interface KitWorkings {
  'fewest-trays': z.input<typeof fewestTraysInput>;
  buildable: z.input<typeof buildableInput>;
}

/**
 * The kit's questions as inputs of the registry, items by their codes, so that its figures can be repeated and varied
 * from outside. The two ends of a sleeve are two names, `CODE end 1` and `CODE end 2`, held together.
 */
export function kitWorkings(
  kit: CaseKit,
  given: { store: Store; caseDate: PlainDate; catalogue: readonly Item[]; settings: KitSettings },
): KitWorkings {
  const index = indexCatalogue(given.catalogue);
  const available = availableFor(given.store, given.caseDate);
  const waiting = new Set(kit.sets.filter((set) => set.readyAt !== null).map((set) => set.setId));
  const coming = available.otherSets.map(({ set }) => set).filter((set) => waiting.has(set.id));
  const problem = coverOfStore({
    needs: kit.needs,
    sets: [...available.sets, ...coming],
    packs: available.packs,
    caseDate: given.caseDate,
    index,
    settings: given.settings,
  });
  const names = namesOf(index);
  return { 'fewest-trays': traysInput(problem, names), buildable: buildableInputOf(kit, problem, names) };
}

type Names = ReturnType<typeof namesOf>;

function namesOf({ byId }: CatalogueIndex) {
  const code = (id: ItemId) => byId.get(id)?.code ?? id;
  const ends = (id: ItemId): number => {
    const item = byId.get(id);
    return item?.kind === 'drillSleeve' ? item.ends.length : 1;
  };
  return {
    code,
    candidate: ({ itemId, endIndex }: Candidate) =>
      itemId === null
        ? NOTHING_NEEDED
        : ends(itemId) > 1
          ? `${code(itemId)} end ${(endIndex ?? 0) + 1}`
          : code(itemId),
    /** Every name under which an item is asked for. */
    all: (id: ItemId) =>
      ends(id) > 1 ? Array.from({ length: ends(id) }, (_, end) => `${code(id)} end ${end + 1}`) : [code(id)],
  };
}

const ROLE_WORDS: Record<LineRole, string> = {
  need: '',
  withoutCaution: ', without a caution',
  backUp: ', with a second piece',
};

function traysInput(store: StoreProblem, names: Names): KitWorkings['fewest-trays'] {
  const { problem } = store;
  const chains = store.lines.map(({ need, role }, at) => {
    const cover = problem.chains[at] as StoreProblem['problem']['chains'][number];
    const kept = need.slots.map(({ candidates }) => candidates);
    const nameAt = (slot: number, number: number) =>
      establishedName(need, role, slot, number, cover, kept, names, store);
    return {
      line: `${need.id}${ROLE_WORDS[role]}`,
      importance: role === 'need' ? ('mustHave' as const) : ('backUp' as const),
      need: {
        kind: 'chain' as const,
        slots: cover.slots.map(({ candidates, pieces }, slot) => ({
          items: candidates.map((_, number) => nameAt(slot, number)),
          pieces,
        })),
        links: cover.links.map(({ first, second, pairs }) => ({
          slots: [first, second] as [number, number],
          pairs: pairs.map(([a, b]): [string, string] => [nameAt(first, a), nameAt(second, b)]),
        })),
      },
    };
  });
  const pieces = store.pieces.map(({ id, accepts }) => ({
    line: id,
    need: { kind: 'pieces' as const, items: accepts.map(({ itemId }) => names.code(itemId)), quantity: 1 },
  }));
  return {
    lines: [...chains, ...pieces],
    sets: store.sets.map((set, at) => {
      const cover = problem.sets[at] as StoreProblem['problem']['sets'][number];
      return {
        set: set.code,
        holds: [...cover.holds].flatMap(([item, count]) =>
          names.all(store.items[item] as ItemId).map((name) => ({ item: name, pieces: count })),
        ),
        promised: set.promisedTo.length > 0,
        useByDays: set.useBy === null ? null : cover.cost.useByDays,
        massGrams: set.massGrams,
        metres: set.place?.metres ?? 0,
      };
    }),
    packs: store.packs.map((pack, at) => ({
      pack: pack.id,
      item: names.all(pack.itemId)[0] as string,
      quantity: pack.quantity,
      useByDays: pack.useBy === null ? null : (problem.packs[at]?.cost.useByDays ?? null),
      metres: pack.place?.metres ?? 0,
    })),
  };
}

/** The name of a candidate of the bare chain: the numbers of items are one, their ends are told apart by position. */
function establishedName(
  need: ChainNeed,
  _role: LineRole,
  slot: number,
  number: number,
  cover: StoreProblem['problem']['chains'][number],
  kept: Candidate[][],
  names: Names,
  store: StoreProblem,
): string {
  const item = cover.slots[slot]?.candidates[number] ?? -1;
  if (item < 0) return NOTHING_NEEDED;
  const id = store.items[item] as ItemId;
  // candidates keep their order, so the how-manieth of its item it is tells the end
  const before = cover.slots[slot]?.candidates.slice(0, number).filter((other) => other === item).length ?? 0;
  const same = (kept[slot] ?? need.slots[slot]?.candidates ?? []).filter(
    (one) => one.itemId === id && one.established,
  );
  const candidate = same[Math.min(before, same.length - 1)];
  return candidate ? names.candidate(candidate) : names.code(id);
}

function buildableInputOf(kit: CaseKit, store: StoreProblem, names: Names): KitWorkings['buildable'] {
  const chosen = new Set(kit.sets.map((set) => set.setId));
  const contents = new Map<string, number>();
  for (const set of store.sets) {
    if (!chosen.has(set.id)) continue;
    for (const { itemId, found } of set.contents) {
      if (!store.numberOf.has(itemId)) continue;
      for (const name of names.all(itemId)) contents.set(name, (contents.get(name) ?? 0) + found);
    }
  }
  const stated = (id: string) =>
    store.pieces.find((need) => need.step === id && !need.id.endsWith('/washer'));
  return {
    steps: kit.needs.steps.map(({ key }) => {
      const accepts = stated(key)?.accepts.map(({ itemId }) => names.code(itemId)) ?? [];
      return {
        step: key,
        piece: accepts.length > 0 ? accepts : null,
        chains: kit.needs.chains.filter((chain) => chain.steps.includes(key)).map((chain) => chain.id),
      };
    }),
    chains: kit.needs.chains.map(({ id, slots, links }) => ({
      chain: id,
      slots: slots.map(({ name, candidates }) => ({
        slot: name,
        items: candidates.filter((one) => one.established).map(names.candidate),
      })),
      links: links.map(({ first, second, pairs }) => ({
        slots: [first, second] as [number, number],
        pairs: pairs.map((pair) => ({
          first: names.candidate(slots[first]?.candidates[pair.first] as Candidate),
          second: names.candidate(slots[second]?.candidates[pair.second] as Candidate),
          outcome: pair.established ? ('fits' as const) : ('notEstablished' as const),
        })),
      })),
    })),
    contents: [...contents].map(([item, pieces]) => ({ item, pieces })),
    pouches: kit.packs.flatMap((pack) =>
      names.all(pack.itemId).map((item) => ({ item, pieces: pack.quantity })),
    ),
  };
}
