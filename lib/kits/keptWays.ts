import type { Item } from '../catalogue/item';
import type { Construct } from '../plans/plan';
import type { Rules } from './askOnce';
import type { CoverProblem } from './cover/problem';
import type { Needs } from './need';
import { needsOf } from './needs';
import type { KitSettings } from './settings';

/** Plans kept for one catalogue and one set of rules, and stores kept for one plan; past so many all are let go. */
const MOST_PLANS = 2_000;
const MOST_STORES = 48;

const needsKept = new WeakMap<Rules, WeakMap<readonly Item[], Map<string, Needs>>>();

/**
 * The needs of a construct, kept for as long as rules and catalogue are the very same: the same construct then gives the very
 * same needs, to which more can be tied.
 */
export function keptNeeds(construct: Construct, catalogue: readonly Item[], engine: Rules): Needs {
  const byCatalogue = needsKept.get(engine) ?? new WeakMap<readonly Item[], Map<string, Needs>>();
  needsKept.set(engine, byCatalogue);
  const byConstruct = byCatalogue.get(catalogue) ?? new Map<string, Needs>();
  byCatalogue.set(catalogue, byConstruct);
  return kept(byConstruct, JSON.stringify(construct), MOST_PLANS, () =>
    needsOf(construct, catalogue, engine),
  );
}

const byNeeds = new WeakMap<Needs, Map<string, unknown>>();

/**
 * What was worked out for these needs against a store of the same content, or is worked out now. The content is what each
 * set that holds anything of it holds, its cost, and the packs: all that the search looks at beside needs and settings. Which
 * sets they are is not in it, so the answer must speak of them by their place.
 */
export function keptForStore<T>(
  needs: Needs,
  { sets, packs }: Pick<CoverProblem, 'sets' | 'packs'>,
  asked: { settings: KitSettings; enough: number | null },
  work: () => T,
): T {
  const content = contentOf({ sets, packs }, asked);
  const stores = (byNeeds.get(needs) ?? new Map()) as Map<string, T>;
  byNeeds.set(needs, stores);
  return kept(stores, content, MOST_STORES, work);
}

/**
 * All that the search looks at, as a text. What sets hold and what they cost is written once each and then named by its number:
 * a house has many sets and few kinds, and texts are kept.
 */
function contentOf({ sets, packs }: Pick<CoverProblem, 'sets' | 'packs'>, asked: object): string {
  const holdings = new Numbering();
  const costs = new Numbering();
  const known = new Map<CoverProblem['sets'][number]['holds'], number>();
  const places = sets.map(({ holds, cost }) => {
    const holding =
      known.get(holds) ?? holdings.numberOf(JSON.stringify([...holds].sort((a, b) => a[0] - b[0])));
    known.set(holds, holding);
    const { promises, useByDays, massGrams, metres } = cost;
    return `${holding} ${costs.numberOf(`${promises} ${useByDays} ${massGrams} ${metres}`)}`;
  });
  return JSON.stringify([asked, holdings.texts, costs.texts, places.join(), packs]);
}

/** Numbers texts in the order in which they first come. */
class Numbering {
  readonly texts: string[] = [];
  private readonly numbers = new Map<string, number>();

  numberOf(text: string): number {
    const known = this.numbers.get(text);
    if (known !== undefined) return known;
    this.numbers.set(text, this.texts.length);
    return this.texts.push(text) - 1;
  }
}

function kept<T>(map: Map<string, T>, key: string, most: number, work: () => T): T {
  const known = map.get(key);
  if (known !== undefined) return known;
  const made = work();
  if (map.size >= most) map.clear();
  map.set(key, made);
  return made;
}
