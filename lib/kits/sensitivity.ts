import type { ItemId } from '../identity/ids';
import { closedBy, isClosed } from './cover/closure';
import { matchPieces } from './cover/pieces';
import { addSet, type CoverChain, type CoverSet, NOTHING } from './cover/problem';
import { chainSpare, pieceSpare, unmetPieces } from './cover/spare';
import type { Ground } from './ground';
import { withoutSet } from './ground';
import type { ChosenSet, SinglePoint, SourceRef, StepMargin, WithoutOne } from './kit';
import type { StepKey } from './need';
import type { StoredSet } from './store';

/** One piece of the kit whose loss stops a step, and where another one is. */
export function singlePoints(ground: Ground): SinglePoint[] {
  const { store, atHand, solved, sources } = ground;
  const points: SinglePoint[] = [];
  const held = needLines(ground);
  const matched = matchPieces(store.problem, atHand).matched;
  for (const [itemId, from] of sources) {
    const item = store.numberOf.get(itemId) as number;
    if ((atHand[item] ?? 0) === 0) continue;
    const less = atHand.slice();
    less[item] = (less[item] ?? 0) - 1;
    const lost = held.filter(({ chain }) => !isClosed(chain, less));
    const steps = new Set<StepKey>(lost.flatMap(({ need }) => need.steps));
    const needIds = lost.map(({ need }) => need.id);
    if (matched > matchPieces(store.problem, less).matched && matched <= solved.reach.pieces) {
      for (const [at, given] of ground.chosen.pieces.given.entries()) {
        if (given?.item !== item) continue;
        const need = store.pieces[at];
        if (need) steps.add(need.step);
        if (need) needIds.push(need.id);
      }
    }
    if (steps.size === 0) continue;
    const otherIn: SourceRef[] = [...setsLeft(itemId, ground), ...packsLeft(itemId, ground)];
    points.push({ itemId, from: from[0] as SourceRef, steps: [...steps], needIds, otherIn });
  }
  return points;
}

/** Sets outside the kit that hold an item, the first of them where so many are enough. */
export function setsLeft(itemId: ItemId, ground: Ground, enough = Number.POSITIVE_INFINITY): SourceRef[] {
  const found: SourceRef[] = [];
  for (const { setId, items } of leftOver(ground)) {
    if (found.length >= enough) break;
    if (items.has(itemId)) found.push({ kind: 'set', setId });
  }
  return found;
}

interface LeftOver {
  setId: StoredSet['id'];
  items: ReadonlySet<ItemId>;
}
const left = new WeakMap<Ground, LeftOver[]>();

/** The sets outside the kit, looked up once for all items. */
function leftOver(ground: Ground): LeftOver[] {
  const known = left.get(ground);
  if (known) return known;
  const { store, chosen, available } = ground;
  const opened = new Set(chosen.sets.map((set) => store.sets[set]?.id));
  const made = available.sets
    .filter(({ id }) => !opened.has(id))
    .map(({ id, contents }) => ({ setId: id, items: heldIn(contents) }));
  left.set(ground, made);
  return made;
}

/** Sets that hold the same share one list of it, and each list is gone through once. */
const held = new WeakMap<StoredSet['contents'], ReadonlySet<ItemId>>();

function heldIn(contents: StoredSet['contents']): ReadonlySet<ItemId> {
  const known = held.get(contents);
  if (known) return known;
  const items = new Set(contents.flatMap(({ itemId, found }) => (found > 0 ? [itemId] : [])));
  held.set(contents, items);
  return items;
}

/** Packs of an item that the kit leaves on the shelf. */
export function packsLeft(itemId: ItemId, { store, chosen }: Ground): SourceRef[] {
  return store.packs.flatMap((pack, at): SourceRef[] =>
    pack.itemId === itemId && pack.quantity > (chosen.packs[at] ?? 0)
      ? [{ kind: 'pack', stockId: pack.id }]
      : [],
  );
}

/** Per step, how many pieces of the kit could be lost, whichever they are, before the step is stopped. */
export function stepMargins(ground: Ground): StepMargin[] {
  const { needs, store, atHand } = ground;
  const spareOfChain = new Map<string, number>();
  for (const { need, chain } of needLines(ground)) spareOfChain.set(need.id, chainSpare(chain, atHand));
  const met = ground.chosen.pieces.given.map((given) => given !== null);
  const spareOfPiece = new Map<string, number>();
  const known = new Map<string, number>();
  store.pieces.forEach((need, at) => {
    const key = store.problem.pieces[at]?.accepts.map(({ item }) => item).join() ?? '';
    const spare = met[at] ? (known.get(key) ?? pieceSpare(store.problem, at, atHand)) : -1;
    if (met[at]) known.set(key, spare);
    spareOfPiece.set(need.id, spare);
  });
  return needs.steps.map(({ key }) => {
    const spares = [
      ...needs.chains
        .filter((chain) => chain.steps.includes(key))
        .map((chain) => spareOfChain.get(chain.id) ?? -1),
      ...needs.pieces.filter((piece) => piece.step === key).map((piece) => spareOfPiece.get(piece.id) ?? -1),
    ];
    return { step: key, spare: spares.length === 0 ? -1 : Math.min(...spares) };
  });
}

/** What would be missing with one chosen tray left closed, whatever packs are fetched instead. */
export function whyNotFewer(ground: Ground): WithoutOne[] {
  const { store, chosen, solved } = ground;
  return chosen.sets.map((set) => {
    const rest = withoutSet(store, chosen, set);
    const { id, code } = store.sets[set] as Ground['store']['sets'][number];
    const missing = solved.reach.chains
      .filter((line) => !isClosed(store.problem.chains[line] as CoverChain, rest))
      .map((line) => store.lines[line] as Ground['store']['lines'][number])
      .map(({ need, role }) => ({ needId: need.id, steps: need.steps, role }))
      // where the chain itself is missing, its milder forms go without saying
      .filter(
        ({ needId, role }, _, all) =>
          role === 'need' || !all.some((one) => one.needId === needId && one.role === 'need'),
      );
    for (const at of unmetPieces(store.problem, rest)) {
      if (!chosen.pieces.given[at]) continue;
      const need = store.pieces[at] as Ground['store']['pieces'][number];
      missing.push({ needId: need.id, steps: [need.step], role: 'need' });
    }
    return { setId: id, code, missing };
  });
}

/** Which needs a chosen tray meets or helps with, and which only it meets. */
export function whatSetMeets(set: number, ground: Ground): Pick<ChosenSet, 'meets' | 'onlyItMeets'> {
  const { store, atHand, chosen } = ground;
  const cover = store.problem.sets[set] as CoverSet;
  const rest = atHand.slice();
  addSet(rest, cover, -1);
  const meets: string[] = [];
  const onlyItMeets: string[] = [];
  for (const { need, chain } of needLines(ground)) {
    const alive = closedBy(chain, atHand);
    const helps = chain.slots.some(({ candidates }, slot) =>
      candidates.some((item, at) => item !== NOTHING && alive?.[slot]?.[at] && cover.holds.has(item)),
    );
    if (helps) meets.push(need.id);
    if (!isClosed(chain, rest)) onlyItMeets.push(need.id);
  }
  const without = new Set(unmetPieces(store.problem, rest));
  chosen.pieces.given.forEach((given, at) => {
    if (!given || given.pack !== null || !cover.holds.has(given.item)) return;
    const { id } = store.pieces[at] as Ground['store']['pieces'][number];
    meets.push(id);
    if (without.has(at)) onlyItMeets.push(id);
  });
  return { meets, onlyItMeets };
}

/** The must-have chains that the kit closes. */
export function needLines({ store, solved }: Ground) {
  return solved.reach.chains.flatMap((line) => {
    const { need, role } = store.lines[line] as Ground['store']['lines'][number];
    return role === 'need' ? [{ need, chain: store.problem.chains[line] as CoverChain }] : [];
  });
}
