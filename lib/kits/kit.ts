import type { ItemId, PlaceId, SetId, StockId } from '../identity/ids';
import type { PlainDate } from '../quantities/plainDate';
import type { LinkVerdict, Needs, PlanFault, SlotName, StepKey } from './need';

/** Where a piece comes from. */
export type SourceRef = { kind: 'set'; setId: SetId } | { kind: 'pack'; stockId: StockId };

/** `open` at the start · `hold` unopened in theatre as a back-up. */
export type KitRole = 'open' | 'hold';

export interface KitPlace {
  id: PlaceId;
  name: string;
  metres: number;
}

export interface ChosenSet {
  setId: SetId;
  code: string;
  configurationName: string;
  role: KitRole;
  place: KitPlace | null;
  useBy: PlainDate | null;
  massGrams: number | null;
  /** When it will be in the sterile store, where the kit waits for it; `null` when it is there. */
  readyAt: string | null;
  /** Other cases it is promised to: reported, and avoided where another kit is equal. */
  promisedTo: string[];
  /** Needs (piece and chain ids) that it meets or helps to meet. */
  meets: string[];
  /** Needs that would be short if this set alone were left out. */
  onlyItMeets: string[];
  /** Other copies of its kind, there and promised to nobody else, that serve this plan exactly as well. */
  alike: { setId: SetId; code: string }[];
}

export interface ChosenPack {
  stockId: StockId;
  itemId: ItemId;
  form: 'pouch' | 'sterilePacked';
  role: KitRole;
  /** How many of them to fetch. */
  quantity: number;
  lot: string | null;
  useBy: PlainDate | null;
  owner: 'ours' | 'consignment';
  place: KitPlace | null;
  meets: string[];
}

/** One concrete link of a chosen chain. */
export interface ChosenLink {
  slot: SlotName;
  itemId: ItemId;
  endIndex: number | null;
  from: SourceRef;
  /** Answers about this item in this step, and with the link before it. */
  answers: LinkVerdict[];
}

export interface ChosenChain {
  chainId: string;
  links: ChosenLink[];
}

/** What one step gets: its piece and its chains, as concrete items. */
export interface StepKit {
  step: StepKey;
  pieces: {
    needId: string;
    itemId: ItemId;
    lengthUm: number | null;
    longerUm: number;
    from: SourceRef;
    answers: LinkVerdict[];
  }[];
  /** Ids into `CaseKit.chains`. */
  chainIds: string[];
  state: 'met' | 'short' | 'notEstablished';
}

/** Why one item at hand does not close a chain. */
export interface NearMiss {
  slot: SlotName;
  itemId: ItemId;
  from: SourceRef;
  answers: LinkVerdict[];
}

/** What is short, and which steps that stops. */
export type Short =
  | {
      kind: 'piece';
      needId: string;
      steps: StepKey[];
      /** Items that would serve, the stated one first. */
      accepts: ItemId[];
      /** Steps that compete for the same pieces: all of them together take only these, and there are fewer. */
      hall: { steps: StepKey[]; accepts: ItemId[]; pieces: number } | null;
      /** Pieces that would serve but can't be had for this case, and why. */
      elsewhere: Elsewhere[];
    }
  | {
      kind: 'chain';
      needId: string;
      importance: 'mustHave' | 'backUp';
      steps: StepKey[];
      /** For each smallest way to close the chain: what would have to be added to what is at hand. */
      wouldClose: ItemId[][];
      /** Slots that nothing at hand fills. */
      emptySlots: SlotName[];
      nearMisses: NearMiss[];
      elsewhere: Elsewhere[];
    };

/** A piece that exists but can't be had for this case. */
export interface Elsewhere {
  itemId: ItemId;
  in: { kind: 'set'; setId: SetId; code: string } | { kind: 'pack'; stockId: StockId };
  because: Unavailable;
}

export type Unavailable =
  | { kind: 'notInStore'; step: string; readyAt: string | null }
  | { kind: 'held'; reason: string }
  | { kind: 'pastUseBy'; useBy: PlainDate }
  /** Let go short for one other case; `null`: for a case, and that has lapsed. */
  | { kind: 'shortForOneCase'; reference: string | null }
  /** Picked for another case: it lies with that kit. */
  | { kind: 'onOtherKit'; reference: string }
  | { kind: 'letOutForOneCase'; reference: string };

/** A set that can't be opened now, named because it would help. */
export interface UnavailableSet {
  setId: SetId;
  code: string;
  configurationName: string;
  because: Unavailable;
  /** Needs, short now, that it would help to meet. */
  wouldMeet: string[];
}

/** A need that would be met if missing values were known. Never counted as a fit. */
export interface NotEstablished {
  needId: string;
  steps: StepKey[];
  /** The answers that are not established, with the missing facts inside. */
  answers: LinkVerdict[];
  /** True for a length the plan does not state. */
  lengthNotStated: boolean;
}

/** One piece whose loss stops a step. */
export interface SinglePoint {
  itemId: ItemId;
  from: SourceRef;
  steps: StepKey[];
  needIds: string[];
  /** Where another one is, that could be fetched. */
  otherIn: SourceRef[];
}

/** How many pieces more than needed could be lost before the step is stopped. */
export interface StepMargin {
  step: StepKey;
  spare: number;
}

/** Another kit with the same number of trays and packs. */
export interface Tie {
  setCodes: string[];
  packs: { itemId: ItemId; quantity: number }[];
  /** The first aim on which the chosen kit is better; `null` when wholly equal. */
  chosenFor: 'statedLength' | 'promises' | 'useBy' | 'mass' | 'distance' | null;
}

/** What would be missing if one chosen tray stayed closed. */
export interface WithoutOne {
  setId: SetId;
  code: string;
  missing: { needId: string; steps: StepKey[]; role: 'need' | 'withoutCaution' | 'backUp' }[];
}

/** How sure it is that no kit is better. */
export type Proof =
  /** Fewest trays and fewest packs, proven. `furtherAims`: whether that is so of all aims, or the best of many looked at. */
  | { kind: 'optimal'; by: 'search' | 'programme'; furtherAims: 'proven' | 'bestFound' }
  /** The time limit ended it: at least `lowerBoundTrays` are needed, `trays` are taken. */
  | { kind: 'gap'; trays: number; lowerBoundTrays: number; gap: number };

/** Phases of the lay-up; the order of use of domain.md §4. */
export type UsePhase =
  | 'plate'
  | 'temporaryWires'
  | 'plainScrews'
  | 'offsetScrews'
  | 'lagScrews'
  | 'lockingScrews';

export interface OrderEntry {
  phase: UsePhase;
  /** Steps of the phase, in plan order. */
  steps: StepKey[];
  /** Instruments in the order their chains use them, then the implants. */
  items: {
    slot: SlotName | 'plate' | 'screw' | 'washer' | 'wire';
    itemId: ItemId;
    quantity: number;
    from: SourceRef;
  }[];
}

/** One line of the pick list: what to take, from where, for which steps. */
export interface PickLine {
  phase: UsePhase;
  slot: SlotName | 'plate' | 'screw' | 'washer' | 'wire';
  itemId: ItemId;
  quantity: number;
  steps: StepKey[];
  from: SourceRef;
  role: KitRole;
  /** Where the next one is when this one fails: a set or pack that stays in store. */
  backUpIn: SourceRef[];
}

export type KitVerdict =
  /** Everything is at hand and every link is established. */
  | { kind: 'ready' }
  /** Nothing is short once the named sets have come back. */
  | {
      kind: 'readyAt';
      at: string;
      /** Later than the kit is needed. */
      late: boolean;
      setCodes: string[];
      /** Needs that are short until then. */
      shortUntilThen: string[];
    }
  | { kind: 'short' }
  /** Nothing is short, but an answer or a length is missing. */
  | { kind: 'notEstablished' }
  /** The plan itself is refused by a rule or names what does not exist. */
  | { kind: 'planStopped' };

export interface LengthCoverFigure {
  /** Input of the registry's `length-cover`, so that the figure can be repeated and varied. */
  input: unknown;
  /** Between 0 and 1; `null` when not established. */
  cover: number | null;
  target: number;
  method: string;
  assumptions: string[];
  /** The smallest top-up that reaches the target; `null` when the target is met or out of reach. */
  topUp:
    | {
        itemId: ItemId | null;
        family: string;
        lengthUm: number;
        quantity: number;
        inStoreAs: { stockId: StockId; quantity: number }[];
      }[]
    | null;
  /** Families and lengths that limit the figure. */
  limitedBy: { family: string; lengthUm: number }[];
}

/** The answer to a plan: the kit, why it is so, and what is short, uncertain or tied. */
export interface CaseKit {
  verdict: KitVerdict;
  /**
   * Without regard to when sets come back. `onlyWith`: single packs close what the sets leave open.
   * `notEstablished`: nothing is short, but a value it rests on is missing.
   */
  buildable: 'yes' | 'onlyWith' | 'no' | 'notEstablished';
  needs: Needs;
  sets: ChosenSet[];
  packs: ChosenPack[];
  steps: StepKit[];
  chains: ChosenChain[];
  shorts: Short[];
  faults: PlanFault[];
  notEstablished: NotEstablished[];
  /** Needs that only a chain with a caution meets, because no other is in store. */
  withCaution: { needId: string; steps: StepKey[]; answers: LinkVerdict[] }[];
  unavailable: UnavailableSet[];
  singlePoints: SinglePoint[];
  margins: StepMargin[];
  ties: Tie[];
  /** The best kit that breaks no promise to another case, when the chosen one does; `null` when there is none. */
  keepingPromises: Tie | null;
  whyNotFewer: WithoutOne[];
  proof: Proof;
  lengthCover: LengthCoverFigure | null;
  order: OrderEntry[];
  pickList: PickLine[];
}
