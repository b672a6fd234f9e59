import { never } from '../identity/result';
import type { Short, Unavailable } from '../kits/kit';
import type { ChainKind, Needs, PlanFault } from '../kits/need';
import { writeMm } from '../quantities/length';
import type { HeldBecause, TurnStep } from '../sets/setState';
import { CHAIN_WORDS, type ItemName, readyWords, SLOT_WORDS, stepsWords, stepWord } from './kit-parts';
import { capitalised, countWord, listWords } from './numbers';
import { HELD_BECAUSE_WORDS, TURN_STEP_WORDS } from './sets';

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

export const isMustHave = (short: Short): boolean =>
  short.kind === 'piece' || short.importance === 'mustHave';

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
    return `${capitalised(listWords(short.accepts.map(name), 'or'))} for ${steps} is not in store.`;
  }
  const chain = needs.chains.find((one) => one.id === short.needId);
  const stops = chain ? CHAIN_STOPS[chain.kind] : 'done';
  if (short.importance === 'backUp')
    return `There is no second ${backUpName(short, name)} for ${steps}; nothing stops while the first one holds.`;
  const ways = short.wouldClose.map((way) => listWords(way.map(name)));
  const would =
    ways.length === 0
      ? 'Nothing in the catalogue closes the chain.'
      : `${capitalised(listWords(ways, 'or'))} would close the chain.`;
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
      return `${TURN_STEP_WORDS[because.step as TurnStep] ?? because.step}${because.readyAt ? `, would be ready at ${readyWords(because.readyAt)}` : ', nobody has said when it is back'}`;
    case 'held':
      return `held, because ${HELD_BECAUSE_WORDS[because.reason as HeldBecause] ?? because.reason}`;
    case 'pastUseBy':
      return `past use-by on the day of the case (${because.useBy})`;
    case 'onOtherKit':
      return `picked for case ${because.reference}`;
    case 'shortForOneCase':
      return because.reference === null
        ? 'short, and what let it go has lapsed'
        : `short, and let go for ${because.reference} only`;
    case 'letOutForOneCase':
      return `let out before the biological result of its load, for ${because.reference} only`;
    default:
      return never(because);
  }
}

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
      return `${stepWord(fault.step, needs)}, ${name(fault.itemId)}: the catalogue does not state ${listWords(fault.facts.map(factWord))}, so what it needs is not certain.`;
    case 'holesNotDecided':
      return `${capitalised(stepWord(fault.step, needs))}: the plan does not say what goes in ${listWords(fault.holeIds)}, or that ${fault.holeIds.length === 1 ? 'it is' : 'they are'} left empty.`;
    case 'noChainInCatalogue':
      return `${CHAIN_WORDS[fault.chain]} for ${stepsWords(fault.steps, needs)}: nothing in the whole catalogue makes a chain whose links fit.`;
    case 'refused':
      return `${stepWord(fault.step, needs)}: ${refusalOf(fault) ?? `${name(fault.itemId)} does not go there.`}`;
    case 'doesNotPass':
      return `${stepWord(fault.step, needs)}: ${name(fault.itemId)} does not go there by its own diameter. The surgeon has to change the plan.`;
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

const FACT_WORDS: Record<string, string> = {
  'screw.tip': 'the form of its tip',
  'screw.countersinkStated': 'whether it is countersunk',
  'wire.diameterUm': 'the wire’s diameter',
  'hole.openingUm': 'the narrowest opening of the hole',
  'washer.innerUm': 'the washer’s inner diameter',
};
const factWord = (fact: string) => FACT_WORDS[fact] ?? fact;
