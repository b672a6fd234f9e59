import { lengthCover } from '../calculations/lengthCover/lengthCover';
import type { LengthCoverInput } from '../calculations/lengthCover/schema';
import type { ItemId } from '../identity/ids';
import type { Ground } from './ground';
import type { LengthCoverFigure } from './kit';
import type { LengthBasis } from './need';
import { packsLeft } from './sensitivity';

const mm = (um: number) => um / 1000;

/**
 * How likely the screws on the table suffice for every length the case turns out to need, by `length-cover` over
 * the opened trays and fetched packs. `null` when the plan has no screw.
 *
 * @param target cover that the top-up should reach; `null` for the figure alone, which is quick
 */
export function coverOfLengths(ground: Ground, target: number | null): LengthCoverFigure | null {
  const input = coverInput(ground, target);
  if (!input) return null;
  const answer = lengthCover(input);
  const figure: LengthCoverFigure = {
    input,
    cover: null,
    target: target ?? 0,
    method: '',
    assumptions: [],
    topUp: null,
    limitedBy: [],
  };
  if (answer.outcome !== 'answered') return figure;
  const { cover, method, limitedBy, topUp } = answer.answer;
  const lengthOf = (family: string, lengthMm: number) =>
    ground.index.family(family).filter((screw) => screw.lengthUm === Math.round(lengthMm * 1000));
  return {
    ...figure,
    cover,
    method: method.kind,
    limitedBy: limitedBy.map((one) => ({ family: one.family, lengthUm: Math.round(one.lengthMm * 1000) })),
    topUp:
      topUp.state === 'found'
        ? topUp.pieces.map(({ family, lengthMm, pieces }) => {
            const screws = lengthOf(family, lengthMm).map((screw) => screw.id);
            return {
              itemId: screws[0] ?? null,
              family,
              lengthUm: Math.round(lengthMm * 1000),
              quantity: pieces,
              inStoreAs: inStoreAs(screws, pieces, ground),
            };
          })
        : null,
  };
}

/** Packs left on the shelf that would give the pieces, first expired first. */
function inStoreAs(screws: ItemId[], pieces: number, ground: Ground) {
  const left = new Set(
    screws
      .flatMap((itemId) => packsLeft(itemId, ground))
      .map((one) => (one.kind === 'pack' ? one.stockId : null)),
  );
  const packs = ground.available.packs
    .filter(
      (pack) => left.has(pack.id) || (screws.includes(pack.itemId) && !ground.store.packs.includes(pack)),
    )
    .sort((a, b) => ((a.useBy ?? '9999') < (b.useBy ?? '9999') ? -1 : 1));
  const taken: { stockId: (typeof packs)[number]['id']; quantity: number }[] = [];
  let open = pieces;
  for (const pack of packs) {
    const already = ground.chosen.packs[ground.store.packs.indexOf(pack)] ?? 0;
    const here = Math.min(open, pack.quantity - already);
    if (here <= 0) continue;
    open -= here;
    taken.push({ stockId: pack.id, quantity: here });
  }
  return taken;
}

/** Lengths that count for the figure are made in steps of half a millimetre. */
const isHalfStep = (lengthUm: number) => lengthUm % 500 === 0;

function coverInput(ground: Ground, target: number | null): LengthCoverInput | null {
  const { needs, index, construct } = ground;
  const screws = needs.pieces.filter((need) => need.what === 'screw' && need.length !== null);
  const stepOf = new Map(needs.steps.map((step) => [step.key, step]));
  const holes = screws.flatMap((need): LengthCoverInput['holes'] => {
    const family = stepOf.get(need.step)?.screwFamily;
    const made = family ? index.family(family) : [];
    if (!family || !need.length || made.length === 0) return [];
    const stated = lengthNeed(
      need.length,
      made.map((screw) => screw.lengthUm ?? 0),
    );
    if (!stated) return [];
    return [{ hole: need.step, family, acceptShorterMm: 0, ...stated }];
  });
  if (holes.length === 0 || holes.length > 40) return null;
  const families = [...new Set(holes.map((hole) => hole.family))].map((family) => {
    const lengths = new Map<number, number>();
    for (const screw of index.family(family)) {
      if (screw.lengthUm === null || !isHalfStep(screw.lengthUm)) continue;
      lengths.set(mm(screw.lengthUm), (lengths.get(mm(screw.lengthUm)) ?? 0) + onTable(screw.id, ground));
    }
    return {
      family,
      lengths: [...lengths].map(([lengthMm, stock]) => ({ lengthMm, stock: Math.min(stock, 99) })),
    };
  });
  return {
    holes,
    families,
    sharedSdMm: construct.sharedLengthSdMm,
    notImplantedChance: 0,
    targetCover: target,
    method: 'auto',
    trials: 20_000,
    seed: 1,
  };
}

function lengthNeed(length: LengthBasis, madeUm: number[]) {
  switch (length.kind) {
    case 'notStated':
      return { need: { kind: 'notStated' as const }, rounding: 'nearest' as const, acceptLongerMm: 0 };
    case 'exact':
      if (!madeUm.includes(length.askedUm) || !isHalfStep(length.askedUm)) return null;
      return {
        need: { kind: 'exact' as const, lengthMm: mm(length.askedUm) },
        rounding: 'nearest' as const,
        acceptLongerMm: mm(length.acceptLongerUm),
      };
    case 'spread':
      if (madeUm.length < 2) return null;
      return {
        need: { kind: 'spread' as const, meanMm: mm(length.meanUm), sdMm: mm(length.sdUm) },
        rounding: length.rounding,
        acceptLongerMm: mm(length.acceptLongerUm),
      };
  }
}

/** Pieces of one screw in the opened trays and the packs fetched, whether the plan names that length or not. */
function onTable(itemId: ItemId, { store, chosen }: Ground): number {
  let count = 0;
  for (const set of chosen.sets) {
    for (const line of store.sets[set]?.contents ?? []) if (line.itemId === itemId) count += line.found;
  }
  chosen.packs.forEach((quantity, pack) => {
    if (store.packs[pack]?.itemId === itemId) count += quantity;
  });
  return count;
}
