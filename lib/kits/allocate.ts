import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import type { CatalogueIndex } from './catalogueIndex';
import { isCautioned } from './cautioned';
import type { ChosenChain, ChosenLink, SourceRef } from './kit';
import type { Candidate, ChainNeed, LinkVerdict } from './need';

/** What is at hand as sources: where each item can be taken from, best first. */
export type Sources = Map<ItemId, SourceRef[]>;

const CAUTION = 1e9;
const APART = 1e4;

/**
 * The concrete chain for a need from what is at hand: without a caution where there is such a one, with the bit that
 * leaves the sleeve the least play, and with as many links as can be from one tray. `null` when none closes.
 */
export function chooseChain(need: ChainNeed, sources: Sources, index: CatalogueIndex): ChosenChain | null {
  const usable = need.slots.map(({ candidates }) =>
    candidates.map(
      (one) => one.established && (one.itemId === null || (sources.get(one.itemId)?.length ?? 0) > 0),
    ),
  );
  const chosen = need.slots.map(() => -1);
  let best: { cost: number; chosen: number[] } | null = null;

  const go = (slot: number, cost: number): void => {
    if (best && cost >= best.cost) return;
    if (slot === need.slots.length) {
      best = { cost, chosen: [...chosen] };
      return;
    }
    need.slots[slot]?.candidates.forEach((candidate, at) => {
      if (!usable[slot]?.[at]) return;
      chosen[slot] = at;
      let more = candidate.answers.some(isCautioned) ? CAUTION : 0;
      more += at / 1000 + unhandy(need, candidate, index);
      for (const link of need.links) {
        if (Math.max(link.first, link.second) !== slot) continue;
        const pair = link.pairs.find(
          (one) => one.established && one.first === chosen[link.first] && one.second === chosen[link.second],
        );
        if (!pair) return;
        if (pair.answer && isCautioned(pair.answer)) more += CAUTION;
        more += play(
          candidateAt(need, link.first, pair.first),
          candidateAt(need, link.second, pair.second),
          index,
        );
        if (
          !together(
            candidateAt(need, link.first, pair.first),
            candidateAt(need, link.second, pair.second),
            sources,
          )
        ) {
          more += APART;
        }
      }
      go(slot + 1, cost + more);
    });
  };
  go(0, 0);
  const found = best as { cost: number; chosen: number[] } | null;
  return found && { chainId: need.id, links: linksOf(need, found.chosen, sources) };
}

const DRILLS = new Set<ChainNeed['kind']>(['drilling', 'lagDrilling', 'wiring']);

/** Bits are driven by power where there is a choice, screws and taps by hand (common practice, no source). */
function unhandy({ kind }: ChainNeed, { itemId }: Candidate, index: CatalogueIndex): number {
  const item = itemId === null ? undefined : index.byId.get(itemId);
  return item?.kind === 'handle' && (item.form === 'power') !== DRILLS.has(kind) ? 1 : 0;
}

function candidateAt(need: ChainNeed, slot: number, at: number): Candidate {
  return need.slots[slot]?.candidates[at] as Candidate;
}

/** Micrometres between a bit and the bore around it; 0 for other pairs. */
function play(first: Candidate, second: Candidate, index: CatalogueIndex): number {
  const item = (one: Candidate) => (one.itemId === null ? undefined : index.byId.get(one.itemId));
  const bore = (one: Candidate, is: Item | undefined) =>
    is?.kind === 'drillSleeve' ? is.ends[one.endIndex ?? 0]?.boreUm : null;
  const [a, b] = [item(first), item(second)];
  const width = a?.kind === 'drillBit' ? a.diameterUm : b?.kind === 'drillBit' ? b.diameterUm : null;
  const around = bore(first, a) ?? bore(second, b) ?? null;
  return width === null || around === null ? 0 : Math.abs(around - width);
}

function together(first: Candidate, second: Candidate, sources: Sources): boolean {
  if (first.itemId === null || second.itemId === null) return true;
  const theirs = sources.get(second.itemId) ?? [];
  return (sources.get(first.itemId) ?? []).some((one) => theirs.some((other) => sameSource(one, other)));
}

export function sameSource(a: SourceRef, b: SourceRef): boolean {
  return a.kind === 'set'
    ? b.kind === 'set' && a.setId === b.setId
    : b.kind === 'pack' && a.stockId === b.stockId;
}

/** The chosen links, each from the source that gives most of the chain. */
function linksOf(need: ChainNeed, chosen: number[], sources: Sources): ChosenLink[] {
  const candidates = chosen.map((at, slot) => candidateAt(need, slot, at));
  const gives = (source: SourceRef) =>
    candidates.filter(
      ({ itemId }) => itemId !== null && sources.get(itemId)?.some((one) => sameSource(one, source)),
    ).length;
  const links: ChosenLink[] = [];
  need.slots.forEach(({ name }, slot) => {
    const { itemId, endIndex, answers } = candidates[slot] as Candidate;
    if (itemId === null) return;
    const own = sources.get(itemId) as SourceRef[];
    const from = own.reduce((most, one) => (gives(one) > gives(most) ? one : most));
    const between: LinkVerdict[] = [];
    for (const link of need.links) {
      if (Math.max(link.first, link.second) !== slot) continue;
      const pair = link.pairs.find(
        (one) => one.first === chosen[link.first] && one.second === chosen[link.second],
      );
      if (pair?.answer) between.push(pair.answer);
    }
    links.push({ slot: name, itemId, endIndex, from, answers: [...answers, ...between] });
  });
  return links;
}
