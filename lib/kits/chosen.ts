import type { ItemId } from '../identity/ids';
import { chooseChain } from './allocate';
import { isClosed } from './cover/closure';
import type { Completed } from './cover/packs';
import { addSet, type CoverSet } from './cover/problem';
import { type SetType, setTypes } from './cover/types';
import type { Ground } from './ground';
import type {
  ChosenChain,
  ChosenPack,
  ChosenSet,
  NotEstablished,
  Short,
  SourceRef,
  StepKit,
  Tie,
} from './kit';
import { needLines, whatSetMeets } from './sensitivity';

/** The chosen trays with what each is for. One that only back-ups need is held unopened. */
export function chosenSets(ground: Ground): ChosenSet[] {
  const types = setTypes(ground.store.problem);
  return ground.chosen.sets.map((number) => {
    const set = ground.store.sets[number] as Ground['store']['sets'][number];
    const { id: setId, code, configurationName, place, useBy, massGrams, promisedTo } = set;
    const meets = whatSetMeets(number, ground);
    return {
      setId,
      code,
      configurationName,
      role: meets.onlyItMeets.length === 0 && onlyForBackUps(number, ground) ? 'hold' : 'open',
      place,
      useBy,
      massGrams,
      readyAt: set.step === 'inSterileStore' ? null : set.readyAt,
      promisedTo,
      ...meets,
      alike: alikeOf(number, ground, types),
    };
  });
}

/** Copies of its configuration that no line of the problem can tell from it, and that stay in store. */
function alikeOf(number: number, { store, chosen }: Ground, types: readonly SetType[]): ChosenSet['alike'] {
  const own = store.sets[number] as Ground['store']['sets'][number];
  const copies = types.find((type) => type.copies.includes(number))?.copies ?? [];
  return copies.flatMap((copy) => {
    const other = store.sets[copy] as Ground['store']['sets'][number];
    const free =
      !chosen.sets.includes(copy) && other.step === 'inSterileStore' && other.promisedTo.length === 0;
    return free && other.configurationId === own.configurationId
      ? [{ setId: other.id, code: other.code }]
      : [];
  });
}

/** Whether everything but the back-ups would be met without it. */
function onlyForBackUps(number: number, ground: Ground): boolean {
  const rest = ground.atHand.slice();
  addSet(rest, ground.store.problem.sets[number] as CoverSet, -1);
  const uses = ground.chosen.pieces.given.some(
    (given) => given?.pack === null && (rest[given.item] ?? 0) < (ground.atHand[given.item] ?? 0),
  );
  return !uses && needLines(ground).every(({ chain }) => isClosed(chain, rest));
}

/** The packs to fetch. Those that no must-have rests on are held unopened. */
export function chosenPacks(ground: Ground): ChosenPack[] {
  const { store, chosen, atHand } = ground;
  return chosen.packs.flatMap((quantity, number): ChosenPack[] => {
    if (quantity === 0) return [];
    const pack = store.packs[number] as Ground['store']['packs'][number];
    const item = store.numberOf.get(pack.itemId) as number;
    const rest = atHand.slice();
    rest[item] = (rest[item] ?? 0) - quantity;
    const asPiece = chosen.pieces.given.flatMap((given, at) =>
      given?.pack === number ? [store.pieces[at]?.id ?? ''] : [],
    );
    const opens = needLines(ground).filter(({ chain }) => !isClosed(chain, rest));
    const looks = ground.needs.chains.filter((need) =>
      need.slots.some(({ candidates }) => candidates.some((one) => one.itemId === pack.itemId)),
    );
    const must = asPiece.length > 0 || opens.length > 0;
    const { id: stockId, itemId, form, lot, useBy, owner, place } = pack;
    const meets = must ? [...asPiece, ...opens.map(({ need }) => need.id)] : looks.map((need) => need.id);
    return [
      { stockId, itemId, form, role: must ? 'open' : 'hold', quantity, lot, useBy, owner, place, meets },
    ];
  });
}

/** Every chain that closes, as concrete items. */
export function chosenChains(ground: Ground): ChosenChain[] {
  return needLines(ground).flatMap(({ need }) => chooseChain(need, ground.sources, ground.index) ?? []);
}

/** Step by step: its piece, its chains, and whether it can be done. */
export function stepKits(
  ground: Ground,
  chains: ChosenChain[],
  unmet: { shorts: Short[]; notEstablished: NotEstablished[] },
): StepKit[] {
  const { needs, store, chosen } = ground;
  const closed = new Set(chains.map((chain) => chain.chainId));
  const refused = new Set(
    needs.faults.flatMap((fault) => ('step' in fault && STOPPING.has(fault.kind) ? [fault.step] : [])),
  );
  const open = needs.faults.flatMap((fault) => (fault.kind === 'factNotStated' ? [fault.step] : []));
  const pieceFrom = new Map<string, StepKit['pieces'][number]>();
  const takeFromSets = takingFromSets(ground);
  chosen.pieces.given.forEach((given, at) => {
    const need = store.pieces[at];
    if (!given || !need) return;
    const itemId = store.items[given.item] as ItemId;
    const accepted = need.accepts.find((one) => one.itemId === itemId);
    const from = given.pack === null ? takeFromSets(given.item) : packSource(given.pack, ground);
    pieceFrom.set(need.id, {
      needId: need.id,
      itemId,
      lengthUm: accepted?.lengthUm ?? null,
      longerUm: accepted?.longerUm ?? 0,
      from,
      answers: accepted?.answers ?? [],
    });
  });
  return needs.steps.map(({ key }) => {
    const pieces = needs.pieces
      .filter((need) => need.step === key)
      .flatMap((need) => pieceFrom.get(need.id) ?? []);
    const chainIds = needs.chains.filter((need) => need.steps.includes(key)).map((need) => need.id);
    const mustHave = (short: Short) => short.kind === 'piece' || short.importance === 'mustHave';
    const short = refused.has(key) || unmet.shorts.some((one) => mustHave(one) && one.steps.includes(key));
    const unknown = open.includes(key) || unmet.notEstablished.some((one) => one.steps.includes(key));
    return {
      step: key,
      pieces,
      chainIds: chainIds.filter((id) => closed.has(id)),
      state: short ? 'short' : unknown ? 'notEstablished' : 'met',
    };
  });
}

/** Faults that stop nothing, and on which no kit is called ready. */
export const LEFT_OPEN = new Set<string>(['factNotStated', 'lengthNotStated', 'holesNotDecided']);

/** Faults of the plan that no store can mend. */
export const STOPPING = new Set<string>([
  'unknownPlate',
  'plateNotCurrent',
  'unknownHole',
  'unknownFamily',
  'unknownItem',
  'itemNotCurrent',
  'lengthNotMade',
  'refused',
  'doesNotPass',
]);

/** Takes one piece after another out of the chosen trays, none twice. */
function takingFromSets({ store, chosen }: Ground): (item: number) => SourceRef {
  const left = chosen.sets.map((set) => new Map(store.problem.sets[set]?.holds));
  return (item) => {
    const at = left.findIndex((holds) => (holds.get(item) ?? 0) > 0);
    const holds = left[at];
    const set = store.sets[chosen.sets[at] ?? -1];
    if (!holds || !set) throw new Error('a piece was given that no opened tray has');
    holds.set(item, (holds.get(item) ?? 0) - 1);
    return { kind: 'set', setId: set.id };
  };
}

function packSource(pack: number, { store }: Ground): SourceRef {
  return { kind: 'pack', stockId: (store.packs[pack] as Ground['store']['packs'][number]).id };
}

const AIMS = [null, null, 'statedLength', 'promises', 'useBy', 'mass', 'distance'] as const;

/** Another kit beside the chosen one, and the first aim on which it is behind. */
export function tieOf(other: Completed, ground: Pick<Ground, 'store' | 'chosen'>): Tie {
  const { store, chosen } = ground;
  const behind = other.cost.findIndex((value, aim) => value !== chosen.cost[aim]);
  return {
    setCodes: other.sets.map((set) => store.sets[set]?.code ?? ''),
    packs: other.packs.flatMap((quantity, pack) => {
      const itemId = store.packs[pack]?.itemId;
      return quantity > 0 && itemId ? [{ itemId, quantity }] : [];
    }),
    chosenFor: behind === -1 ? null : (AIMS[behind] ?? null),
  };
}
