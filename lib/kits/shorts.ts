import { hallViolator, largestMatching } from '../calculations/matching';
import type { ItemId } from '../identity/ids';
import { closedBy, waysToClose } from './cover/closure';
import { type AtHand, NOTHING } from './cover/problem';
import { coverChain, possibleChain } from './coverOfStore';
import { everythingAtHand, type Ground } from './ground';
import type { Elsewhere, NotEstablished, Short, UnavailableSet } from './kit';
import { nearMissesOf } from './nearMisses';
import type { ChainNeed, LinkVerdict, PieceNeed } from './need';

const MOST_WAYS = 6;

/** What the chosen kit leaves unmet: short, or only not established. */
export function unmetNeeds(ground: Ground): { shorts: Short[]; notEstablished: NotEstablished[] } {
  const shorts: Short[] = [];
  const notEstablished: NotEstablished[] = [];
  const { store, solved } = ground;
  const all = everythingAtHand(store);
  for (const line of solved.reach.shortChains) {
    const { need, role } = store.lines[line] as Ground['store']['lines'][number];
    // a caution that can't be avoided is told apart (`withCaution`), it is no shortage
    if (role === 'withoutCaution') continue;
    // where the chain itself is short, its back-up goes without saying
    if (role === 'backUp' && !isMet(need, ground)) continue;
    const unsettled = role === 'need' ? unsettledAnswers(need, ground) : null;
    if (unsettled)
      notEstablished.push({ needId: need.id, steps: need.steps, answers: unsettled, lengthNotStated: false });
    else shorts.push(shortChain(need, role, all, ground));
  }
  for (const need of ground.needs.pieces) {
    if (need.length?.kind !== 'notStated') continue;
    const answers = need.notEstablished[0]?.answers ?? [];
    notEstablished.push({ needId: need.id, steps: [need.step], answers, lengthNotStated: true });
  }
  ground.chosen.pieces.given.forEach((given, at) => {
    if (given) return;
    const need = store.pieces[at] as PieceNeed;
    const open = need.notEstablished.find(({ itemId }) => inStore(itemId, ground));
    if (open && need.accepts.length === 0) {
      notEstablished.push({
        needId: need.id,
        steps: [need.step],
        answers: open.answers.filter(notEstablishedAnswer),
        lengthNotStated: false,
      });
    } else shorts.push(shortPiece(need, at, ground));
  });
  return { shorts, notEstablished };
}

function isMet(need: ChainNeed, { store, solved }: Ground): boolean {
  return solved.reach.chains.some(
    (line) => store.lines[line]?.need === need && store.lines[line]?.role === 'need',
  );
}

const notEstablishedAnswer = (answer: LinkVerdict) => answer.verdict.outcome === 'notEstablished';

function inStore(itemId: ItemId, { available }: Ground): boolean {
  return (
    available.packs.some((pack) => pack.itemId === itemId) ||
    available.sets.some((set) => set.contents.some((line) => line.itemId === itemId && line.found > 0))
  );
}

/** The open answers of a chain that would close with what is in store if they were known; `null` if it would not. */
function unsettledAnswers(need: ChainNeed, ground: Ground): LinkVerdict[] | null {
  const numbers = new Map<ItemId, number>();
  const number = (id: ItemId) => {
    const known = numbers.get(id) ?? numbers.size;
    numbers.set(id, known);
    return known;
  };
  const chain = possibleChain(need, number);
  const atHand = new Int32Array(numbers.size);
  for (const [id, at] of numbers) atHand[at] = inStore(id, ground) ? 9 : 0;
  const alive = closedBy(chain, atHand);
  if (!alive) return null;
  const open: LinkVerdict[] = [];
  need.slots.forEach(({ candidates }, slot) => {
    candidates.forEach((one, at) => {
      if (alive[slot]?.[at]) open.push(...one.answers.filter(notEstablishedAnswer));
    });
  });
  for (const { first, second, pairs } of need.links) {
    for (const pair of pairs) {
      const lives = alive[first]?.[pair.first] && alive[second]?.[pair.second];
      if (lives && pair.answer && notEstablishedAnswer(pair.answer)) open.push(pair.answer);
    }
  }
  return open;
}

function shortChain(need: ChainNeed, role: 'need' | 'backUp', all: AtHand, ground: Ground): Short {
  const { store } = ground;
  const number = (id: ItemId) => store.numberOf.get(id) as number;
  const whole = coverChain(need, number, () => true);
  const breaks = role === 'backUp' ? ground.solved.reach.shortChains : [];
  const line = breaks.find((at) => store.lines[at]?.need === need && store.lines[at]?.role === 'backUp');
  const chain = (line !== undefined && store.problem.chains[line]) || whole;
  const unlimited = new Int32Array(store.problem.itemCount).fill(9);
  const ways = waysToClose(chain, all, unlimited, 2_000)
    .sort((a, b) => a.size - b.size)
    .slice(0, MOST_WAYS)
    .map((way) => [...way.keys()].map((item) => store.items[item] as ItemId));
  const emptySlots = need.slots
    .filter((_, slot) => {
      const { candidates, pieces } = chain.slots[slot] as (typeof chain.slots)[number];
      return !candidates.some((item) => item === NOTHING || (all[item] ?? 0) >= pieces);
    })
    .map(({ name }) => name);
  const wanted = new Set(ways.flat());
  return {
    kind: 'chain',
    needId: need.id,
    importance: role === 'backUp' ? 'backUp' : 'mustHave',
    steps: need.steps,
    wouldClose: ways,
    emptySlots,
    nearMisses: role === 'backUp' ? [] : nearMissesOf(need, emptySlots, ground),
    elsewhere: elsewhereOf(wanted, ground),
  };
}

function shortPiece(need: PieceNeed, at: number, ground: Ground): Short {
  const { store } = ground;
  const all = everythingAtHand(store);
  const accepted = store.problem.pieces.map(({ accepts }) => accepts.map(({ item }) => item));
  const stock = [...all];
  const matched = largestMatching(accepted, stock);
  // the reason is asked for this need alone: others that go without have their own
  const given = matched.map((kind, other) => (kind === null && other !== at ? -1 : kind));
  const mine = given[at] === null ? given : matched;
  const violated = hallViolator(accepted, stock, mine);
  const hall =
    violated && violated.needs.length > 1
      ? {
          steps: violated.needs.map((one) => (store.pieces[one] as PieceNeed).step),
          accepts: violated.kinds.map((item) => store.items[item] as ItemId),
          pieces: violated.kinds.reduce((sum, item) => sum + (all[item] ?? 0), 0),
        }
      : null;
  const accepts = need.accepts.map(({ itemId }) => itemId);
  const wanted = new Set(hall ? hall.accepts : accepts);
  return {
    kind: 'piece',
    needId: need.id,
    steps: [need.step],
    accepts,
    hall,
    elsewhere: elsewhereOf(wanted, ground),
  };
}

/** Where the wanted items are, although they can't be had for this case. */
function elsewhereOf(wanted: Set<ItemId>, { available }: Ground): Elsewhere[] {
  const found: Elsewhere[] = [];
  for (const { set, because } of available.otherSets) {
    for (const itemId of new Set(set.contents.filter((line) => line.found > 0).map((line) => line.itemId))) {
      if (wanted.has(itemId))
        found.push({ itemId, in: { kind: 'set', setId: set.id, code: set.code }, because });
    }
  }
  for (const { pack, because } of available.otherPacks) {
    if (wanted.has(pack.itemId))
      found.push({ itemId: pack.itemId, in: { kind: 'pack', stockId: pack.id }, because });
  }
  return found;
}

/** Sets that can't be opened now and would help with what is short. */
export function helpfulSets(shorts: Short[], { available }: Ground): UnavailableSet[] {
  return available.otherSets.flatMap(({ set, because }) => {
    const wouldMeet = shorts
      .filter((short) => short.elsewhere.some((one) => one.in.kind === 'set' && one.in.setId === set.id))
      .map((short) => short.needId);
    const { id: setId, code, configurationName } = set;
    return wouldMeet.length > 0 ? [{ setId, code, configurationName, because, wouldMeet }] : [];
  });
}

/** Needs that only a chain with a caution meets. */
export function cautionedNeeds({ solved, store }: Ground): ChainNeed[] {
  const short = new Set(solved.reach.shortChains);
  return store.lines.flatMap(({ need, role }, line) => {
    if (role !== 'need' || short.has(line)) return [];
    const better = store.lines.findIndex((other) => other.need === need && other.role === 'withoutCaution');
    const cautioned = better === -1 ? false : short.has(better);
    return cautioned ? [need] : [];
  });
}
