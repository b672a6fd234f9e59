import type { ItemId } from '../identity/ids';
import { never } from '../identity/result';
import type {
  CaseKit,
  KitVerdict,
  LengthCoverFigure,
  Proof,
  Short,
  SourceRef,
  Tie,
  Unavailable,
  UsePhase,
} from '../kits/kit';
import type { ChainKind, LengthBasis, Needs, PieceNeed, PlanFault, SlotName, StepKey } from '../kits/need';
import { writeMm } from '../quantities/length';
import { wallClock } from '../theatre/localTime';
import { countWord, listWords, percentWord } from './numbers';

/** How a kit stands, for people: a word and how it weighs. The tone goes with a shape on screen. */
export interface VerdictWords {
  tone: 'good' | 'attention' | 'stop' | 'unknown';
  word: string;
  sentence: string;
}

/** How items are called on the screen or sheet at hand. */
export type ItemName = (itemId: ItemId) => string;

export const SLOT_WORDS: Record<SlotName | PieceNeed['what'], string> = {
  pilotBit: 'pilot bit',
  sleeve: 'sleeve',
  glidingBit: 'gliding bit',
  glidingSleeve: 'gliding sleeve',
  insertSleeve: 'insert sleeve',
  tap: 'tap',
  countersink: 'countersink',
  gauge: 'depth gauge',
  driver: 'driver',
  torqueLimiter: 'torque limiter',
  handle: 'handle or coupling',
  glidingHandle: 'handle or coupling for the gliding bit',
  wireDriver: 'wire driver',
  plate: 'plate',
  screw: 'screw',
  washer: 'washer',
  wire: 'temporary wire',
};

export const CHAIN_WORDS: Record<ChainKind, string> = {
  drilling: 'Drilling',
  lagDrilling: 'Drilling for a lag screw',
  tapping: 'Tapping',
  countersinking: 'Countersinking',
  measuring: 'Measuring the length',
  driving: 'Driving the screw',
  wiring: 'Placing the wire',
};

/** What stops when the chain is short. */
const CHAIN_STOPS: Record<ChainKind, string> = {
  drilling: 'drilled',
  lagDrilling: 'drilled as a lag screw',
  tapping: 'tapped',
  countersinking: 'countersunk',
  measuring: 'measured',
  driving: 'driven',
  wiring: 'wired',
};

export const PHASE_WORDS: Record<UsePhase, string> = {
  plate: 'The plate',
  temporaryWires: 'Temporary wires',
  plainScrews: 'Plain screws, which draw the plate to bone',
  offsetScrews: 'Offset screws',
  lagScrews: 'Lag screws',
  lockingScrews: 'Locking screws',
};

/** `P1/S3 → 'S3'` where there is one plate; `'P2 S3'` where there are more; `L1` and `P1` as they are. */
export function stepWord(key: StepKey, needs: Pick<Needs, 'steps'>): string {
  const step = needs.steps.find((one) => one.key === key);
  if (!step || step.kind === 'freeScrew') return key;
  if (step.kind === 'plate') return severalPlates(needs) ? `plate ${key}` : 'the plate';
  return severalPlates(needs) ? `${step.plateKey} ${step.holeId}` : (step.holeId ?? key);
}

function severalPlates({ steps }: Pick<Needs, 'steps'>): boolean {
  return steps.filter((step) => step.kind === 'plate').length > 1;
}

/** Many steps in short: holes that follow each other are drawn together, `S1–S3, S6 and L1`. */
export function stepsWords(keys: readonly StepKey[], needs: Pick<Needs, 'steps'>): string {
  const order = needs.steps.map((step) => step.key).filter((key) => keys.includes(key));
  const words: string[] = [];
  for (let at = 0; at < order.length; ) {
    let end = at;
    while (end + 1 < order.length && follows(order[end] as string, order[end + 1] as string)) end += 1;
    const first = stepWord(order[at] as string, needs);
    if (end - at >= 2) words.push(`${first}–${(order[end] as string).split('/')[1]}`);
    else for (let one = at; one <= end; one += 1) words.push(stepWord(order[one] as string, needs));
    at = end + 1;
  }
  return listWords(words);
}

function follows(a: StepKey, b: StepKey): boolean {
  const parts = (key: StepKey) => /^(.*?)(\d+)$/.exec(key);
  const [one, other] = [parts(a), parts(b)];
  return (
    a.includes('/') &&
    one !== null &&
    other !== null &&
    one[1] === other[1] &&
    Number(other[2]) === Number(one[2]) + 1
  );
}

/** The answer in one word and one sentence. */
export function verdictWords(kit: CaseKit, name: ItemName): VerdictWords {
  const { verdict } = kit;
  switch (verdict.kind) {
    case 'ready':
      return {
        tone: 'good',
        word: 'Ready',
        sentence: `Everything the plan needs is in store and fits. ${whatToTake(kit)}`,
      };
    case 'readyAt':
      return {
        tone: verdict.late ? 'stop' : 'attention',
        word: `Ready at ${readyWords(verdict.at)}`,
        sentence: `${listWords(verdict.setCodes)} ${verdict.setCodes.length === 1 ? 'is' : 'are'} back in the sterile store then${
          verdict.late ? ', which is later than the case begins' : ''
        }. ${whatToTake(kit)}`,
      };
    case 'short': {
      const mine = kit.shorts.filter(isMustHave);
      const first = mine[0] as Short;
      const more = mine.length > 1 ? ` and ${countWord(mine.length - 1)} more` : '';
      return {
        tone: 'stop',
        word: `Short: ${shortName(first, kit.needs, name)}${more}`,
        sentence: shortSentence(first, kit.needs, name),
      };
    }
    case 'notEstablished':
      return {
        tone: 'unknown',
        word: 'Not established',
        sentence:
          'Nothing is known to be short, but a value is missing: what is not known to fit is never counted as a fit.',
      };
    case 'planStopped':
      return {
        tone: 'stop',
        word: 'The plan can’t be built as it is stated',
        sentence:
          'What stops it is listed below. The plan has to be changed by the surgeon; no other implant is offered here.',
      };
    default:
      return never(verdict);
  }
}

/** `05:40`, and the day with it where it is not today's by the text alone. */
export function readyWords(at: string): string {
  const { time, date } = wallClock(at);
  return `${time} on ${date.slice(8)}/${date.slice(5, 7)}`;
}

export const isMustHave = (short: Short): boolean =>
  short.kind === 'piece' || short.importance === 'mustHave';

/** `Open 2 trays, hold 1, fetch 3 packs.` */
export function whatToTake({ sets, packs }: Pick<CaseKit, 'sets' | 'packs'>): string {
  const open = sets.filter((set) => set.role === 'open').length;
  const hold = sets.length - open;
  const fetch = packs.reduce((sum, pack) => sum + pack.quantity, 0);
  const parts = [
    `open ${countWord(open)} ${open === 1 ? 'tray' : 'trays'}`,
    ...(hold > 0 ? [`hold ${countWord(hold)} unopened`] : []),
    ...(fetch > 0 ? [`fetch ${countWord(fetch)} single ${fetch === 1 ? 'pack' : 'packs'}`] : []),
  ];
  const text = listWords(parts);
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** The thing that is short, by name. */
export function shortName(short: Short, needs: Needs, name: ItemName): string {
  if (short.kind === 'piece') {
    const need = needs.pieces.find((one) => one.id === short.needId);
    const first = short.accepts[0] ?? need?.refused[0]?.itemId ?? need?.notEstablished[0]?.itemId;
    return first ? name(first) : 'a length that is not made';
  }
  const way = short.wouldClose[0];
  if (way && way.length > 0 && short.wouldClose.length === 1) return listWords(way.map(name));
  const empty = [...new Set(short.emptySlots.map((slot) => SLOT_WORDS[slot]))];
  return empty.length > 0 ? listWords(empty) : 'pieces that fit each other';
}

/** What is short and which steps that stops. */
export function shortSentence(short: Short, needs: Needs, name: ItemName): string {
  const steps = stepsWords(short.steps, needs);
  if (short.kind === 'piece') {
    if (short.hall) {
      const takes = listWords(short.hall.accepts.map(name), 'or');
      return `${stepsWords(short.hall.steps, needs)} take only ${takes}; there ${short.hall.pieces === 1 ? 'is' : 'are'} ${countWord(short.hall.pieces)}.`;
    }
    if (short.accepts.length === 0)
      return `Nothing current serves ${steps}: see what the plan asks for there.`;
    return `${capital(listWords(short.accepts.map(name), 'or'))} for ${steps} is not in store.`;
  }
  const chain = needs.chains.find((one) => one.id === short.needId);
  const stops = chain ? CHAIN_STOPS[chain.kind] : 'done';
  if (short.importance === 'backUp')
    return `There is no second ${backUpName(short, name)} for ${steps}; nothing stops while the first one holds.`;
  const ways = short.wouldClose.map((way) => listWords(way.map(name)));
  const would =
    ways.length === 0
      ? 'Nothing in the catalogue closes the chain.'
      : `${capital(listWords(ways, 'or'))} would close the chain.`;
  return `Without it ${steps} can’t be ${stops}. ${would}`;
}

function backUpName(short: Extract<Short, { kind: 'chain' }>, name: ItemName): string {
  const first = short.wouldClose[0]?.[0];
  return first ? name(first) : 'bit';
}

/** Why a set or pack can't be had for this case. */
export function unavailableWords(because: Unavailable): string {
  switch (because.kind) {
    case 'notInStore':
      return `${STEP_WORDS[because.step] ?? because.step}${because.readyAt ? `, would be ready at ${readyWords(because.readyAt)}` : ', nobody has said when it is back'}`;
    case 'held':
      return `held, because ${HELD_WORDS[because.reason] ?? because.reason}`;
    case 'pastUseBy':
      return `past use-by on the day of the case (${because.useBy})`;
    default:
      return never(because);
  }
}

const STEP_WORDS: Record<string, string> = {
  inTheatre: 'in theatre',
  comingBack: 'coming back',
  washing: 'washing',
  onBench: 'on bench',
  shortAwaitingDecision: 'short, awaiting decision',
  packed: 'packed',
  inSteriliser: 'in steriliser',
  awaitingAcceptance: 'awaiting acceptance',
  inSterileStore: 'in sterile store',
  held: 'held',
};

const HELD_WORDS: Record<string, string> = {
  dirtyAfterWash: 'it was dirty after wash',
  wrapWetTornOrUnsealed: 'its wrap was wet, torn or unsealed',
  indicatorOrCycleFailed: 'the indicator or the cycle failed',
  loadUnknown: 'its load is not known',
  recall: 'of a recall',
  wrongLabel: 'its label is wrong',
  disputedCount: 'its count is disputed',
  loanWithoutDeclaration: 'the loan came without declaration or instructions',
  mustHaveDamaged: 'a must-have is damaged',
};

/** What the plan itself leaves open or asks in vain, and the way out. */
export function faultSentence(fault: PlanFault, needs: Needs, name: ItemName): string {
  switch (fault.kind) {
    case 'unknownPlate':
      return `${fault.step} names a plate that the catalogue does not have: choose a plate again.`;
    case 'plateNotCurrent':
      return `${name(fault.itemId)} is ${fault.status}: it is part of no kit. The surgeon has to change the plan.`;
    case 'unknownHole':
      return `The plate has no hole ${fault.step.split('/')[1]}: the plan was made for another form of it.`;
    case 'unknownFamily':
      return `${stepWord(fault.step, needs)}: there is no screw family “${fault.family}” in the catalogue.`;
    case 'unknownItem':
      return `${stepWord(fault.step, needs)} names an item that the catalogue does not have.`;
    case 'itemNotCurrent':
      return `${stepWord(fault.step, needs)}: ${name(fault.itemId)} is ${fault.status} and part of no kit.`;
    case 'lengthNotMade': {
      const made = fault.madeUm;
      const range =
        made.length > 0
          ? ` It is made from ${writeMm(Math.min(...made))} to ${writeMm(Math.max(...made))} mm.`
          : '';
      return `${stepWord(fault.step, needs)}: ${fault.family} is not made in ${writeMm(fault.askedUm)} mm.${range}`;
    }
    case 'lengthNotStated':
      return `${stepWord(fault.step, needs)}: the plan does not say how long the screw is, so none can be fetched.`;
    case 'factNotStated':
      return `${stepWord(fault.step, needs)}: ${name(fault.itemId)} has no ${listWords(fault.facts.map(factWord))} in the catalogue, so what it needs is not certain.`;
    case 'noChainInCatalogue':
      return `${CHAIN_WORDS[fault.chain]} for ${stepsWords(fault.steps, needs)}: nothing in the whole catalogue makes a chain whose links fit.`;
    case 'refused':
      return `${stepWord(fault.step, needs)}: ${refusalOf(fault) ?? `${name(fault.itemId)} does not go there.`}`;
    default:
      return never(fault);
  }
}

function refusalOf(fault: Extract<PlanFault, { kind: 'refused' }>): string | undefined {
  const findings = fault.answers.flatMap((answer) => answer.verdict.findings);
  return findings.find(
    (finding) => finding.answer === 'notMet' && finding.severity === 'stops' && !finding.outranked,
  )?.sentence;
}

const factWord = (fact: string) => (fact === 'screw.tip' ? 'form of tip' : 'word on countersinking');

/** Where the length of a piece comes from. */
export function basisWords(basis: LengthBasis): string {
  switch (basis.kind) {
    case 'exact':
      return `stated as ${writeMm(basis.askedUm)} mm${longerWords(basis.acceptLongerUm)}`;
    case 'spread':
      return `stated as ${writeMm(basis.meanUm)} ± ${writeMm(basis.sdUm)} mm, ${
        basis.rounding === 'up' ? 'rounded up for both cortices' : 'rounded to the nearest'
      }${basis.expectedUm === null ? '' : `: ${writeMm(basis.expectedUm)} mm`}${longerWords(basis.acceptLongerUm)}`;
    case 'notStated':
      return 'length not stated';
    default:
      return never(basis);
  }
}

const longerWords = (um: number) => (um > 0 ? `, up to ${writeMm(um)} mm longer accepted` : '');

/** How sure it is that no kit is better. */
export function proofWords(proof: Proof): string {
  if (proof.kind === 'gap') {
    return `The time limit ended it: ${proof.trays} trays are taken, at least ${proof.lowerBoundTrays} are needed (gap ${percentWord(proof.gap, 0)}).`;
  }
  return proof.by === 'search'
    ? 'Proven: every choice of fewer trays leaves something short.'
    : 'Proven by integer programme, gap 0.';
}

const TIE_WORDS: Record<NonNullable<Tie['chosenFor']>, string> = {
  statedLength: 'lengths are closer to those stated',
  promises: 'it touches no promise to another case',
  useBy: 'its use-by comes first',
  mass: 'it is lighter',
  distance: 'it is nearer',
};

export const tieWords = (tie: Tie): string =>
  tie.chosenFor === null
    ? 'Equal on every aim.'
    : `The chosen kit is preferred because ${TIE_WORDS[tie.chosenFor]}.`;

export const BUILDABLE_WORDS: Record<CaseKit['buildable'], string> = {
  yes: 'yes',
  onlyWith: 'only with the packs named',
  no: 'no',
};

/** `97.6 %`, or `null` where it is not established. */
export function coverWords(figure: LengthCoverFigure | null): string | null {
  return figure?.cover == null ? null : percentWord(figure.cover, 1);
}

/** What would bring the cover to the target, and whether the store has it. */
export function topUpSentence(figure: LengthCoverFigure): string | null {
  if (figure.cover === null) return null;
  if (figure.cover >= figure.target) return `At or above the target of ${percentWord(figure.target, 0)}.`;
  if (!figure.topUp) return `No top-up was found that reaches ${percentWord(figure.target, 0)}.`;
  const parts = figure.topUp.map(({ family, lengthUm, quantity, inStoreAs }) => {
    const there = inStoreAs.reduce((sum, pack) => sum + pack.quantity, 0);
    const store =
      there >= quantity
        ? 'in store as packs'
        : there > 0
          ? `${there} in store as packs`
          : 'not in store as packs';
    return `${quantity} × ${family}, ${writeMm(lengthUm)} mm (${store})`;
  });
  return `To reach ${percentWord(figure.target, 0)}: ${listWords(parts)}.`;
}

/** Short words for a source: the set's code, or the pack. */
export function sourceKey(from: SourceRef): string {
  return from.kind === 'set' ? from.setId : from.stockId;
}

export const verdictTone = (verdict: KitVerdict): VerdictWords['tone'] =>
  verdict.kind === 'ready'
    ? 'good'
    : verdict.kind === 'readyAt'
      ? verdict.late
        ? 'stop'
        : 'attention'
      : verdict.kind === 'notEstablished'
        ? 'unknown'
        : 'stop';

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
