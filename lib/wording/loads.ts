import type { AcceptanceFinding } from '../loads/acceptance';
import type { CycleOutcome } from '../loads/cycle/summary';
import type { HoldsImplants } from '../loads/implants';
import type { IndicatorKind, IndicatorResult, LoadState, PackState, UnloadedAs } from '../loads/load';
import type { FailureOf, PackFate } from '../loads/touched';
import { listWords } from './numbers';

type Tone = 'good' | 'attention' | 'stop' | 'unknown' | 'neutral';

export const LOAD_STATE_WORDS: Record<LoadState, string> = {
  makingUp: 'being made up',
  running: 'in the steriliser',
  awaitingAcceptance: 'awaiting acceptance',
  accepted: 'accepted',
  rejected: 'rejected',
  undone: 'given up',
};

export const LOAD_STATE_TONES: Record<LoadState, Tone> = {
  makingUp: 'neutral',
  running: 'neutral',
  awaitingAcceptance: 'attention',
  accepted: 'good',
  rejected: 'stop',
  undone: 'neutral',
};

export const INDICATOR_WORDS: Record<IndicatorKind, string> = {
  chemical: 'chemical indicator',
  biological: 'biological indicator',
  airRemoval: 'air removal test',
  printedRecord: 'printed record of the cycle',
};

export const RESULT_WORDS: Record<IndicatorResult, string> = {
  pending: 'result pending',
  passed: 'passed',
  failed: 'failed',
};

export const RESULT_TONES: Record<IndicatorResult, Tone> = {
  pending: 'unknown',
  passed: 'good',
  failed: 'stop',
};

export const UNLOADED_WORDS: Record<UnloadedAs, string> = {
  sound: 'sound',
  wet: 'wet',
  torn: 'torn',
  unsealed: 'unsealed',
};

export const PACK_STATE_WORDS: Record<PackState, string> = {
  closed: 'closed, in no load',
  inLoad: 'in a load',
  awaitingAcceptance: 'awaiting acceptance',
  sterile: 'sterile',
  opened: 'opened',
  undone: 'no longer a pack',
};

export const IMPLANT_WORDS: Record<HoldsImplants, string> = {
  yes: 'holds implants',
  no: 'no implants',
  notEstablished: 'implants: not established',
};

export const CYCLE_OUTCOME_WORDS: Record<CycleOutcome, string> = {
  kept: 'programme kept',
  notKept: 'programme not kept',
  notEstablished: 'not established',
};
export const CYCLE_OUTCOME_TONES: Record<CycleOutcome, Tone> = {
  kept: 'good',
  notKept: 'stop',
  notEstablished: 'unknown',
};

export const FATE_WORDS: Record<PackFate, string> = {
  here: 'here',
  heldAlready: 'held',
  used: 'went out and may have been used',
  openedHere: 'opened here since, not used from this load',
  notEstablished: 'not established',
};
export const FATE_TONES: Record<PackFate, Tone> = {
  here: 'attention',
  heldAlready: 'stop',
  used: 'stop',
  openedHere: 'neutral',
  notEstablished: 'unknown',
};

export const FAILURE_WORDS: Record<FailureOf, string> = {
  biological: 'the biological result failed',
  other: 'the load was rejected',
};

const packsWords = (names: readonly string[]) => listWords([...names]);

/** One finding before a load is decided, in a sentence with the way out. */
export function findingSentence(finding: AcceptanceFinding): string {
  switch (finding.kind) {
    case 'notEnded':
      return 'The load is not waiting to be accepted.';
    case 'cycleKept':
      return 'The imported record shows that the programme was kept.';
    case 'cycleNotKept':
      return 'The imported record shows that the programme was not kept: reject the load.';
    case 'noCycleRecord':
      return 'No record of the cycle was imported; the printed record is what there is.';
    case 'cycleNotEstablished':
      return `What the imported record shows is not established${finding.missing.length === 0 ? '' : `; missing: ${someOf(finding.missing)}`}. Look at the printed record and say why the load may be accepted.`;
    case 'indicatorPassed':
      return `The ${INDICATOR_WORDS[finding.indicator]} passed.`;
    case 'indicatorNotUsed':
      return `No ${INDICATOR_WORDS[finding.indicator]} is on record, and local policy asks for one.`;
    case 'indicatorPending':
      return `The ${INDICATOR_WORDS[finding.indicator]} is not read yet.`;
    case 'indicatorFailed':
      return `The ${INDICATOR_WORDS[finding.indicator]} failed: reject the load.`;
    case 'indicatorPastUseBy':
      return `The ${INDICATOR_WORDS[finding.indicator]}${finding.lot === null ? '' : `, lot ${finding.lot},`} was past use-by (${finding.useBy}) when the load ran: its result says nothing.`;
    case 'indicatorLotNotStated':
      return `The lot of the ${INDICATOR_WORDS[finding.indicator]} is not stated.`;
    case 'indicatorUseByNotStated':
      return `The use-by of the ${INDICATOR_WORDS[finding.indicator]} is not stated.`;
    case 'noPacks':
      return 'There is no pack in the load.';
    case 'notLookedAt':
      return `Not looked at since unloading: ${packsWords(finding.packs)}.`;
    case 'unfit':
      return `${UNLOADED_WORDS[finding.as][0]?.toUpperCase()}${UNLOADED_WORDS[finding.as].slice(1)} when unloaded, so not accepted with the rest: ${packsWords(finding.packs)}.`;
    case 'noneSound':
      return 'No pack is sound: there is nothing to accept. Reject the load.';
    case 'allSound':
      return finding.count === 1
        ? 'The pack was looked at and is sound.'
        : `All ${finding.count} packs were looked at and are sound.`;
    case 'implantsAwaitBiological':
      return `Implants wait for the biological result: ${packsWords(finding.packs)}.`;
    case 'implantsNotEstablished':
      return `Whether implants lie in it is not established, so it waits for the biological result: ${packsWords(finding.packs)}.`;
  }
}

const MOST_SAID = 3;

function someOf(all: readonly string[]): string {
  const more = all.length - MOST_SAID;
  return more > 0 ? `${all.slice(0, MOST_SAID).join('; ')} and ${more} more` : all.join('; ');
}

/** What keeps a write about a load from being done, and the way out. */
export const loadWords = {
  notPermitted: (name: string, verb: string) => `${name} can’t ${verb}.`,
  noSuchLoad: 'There is no such load.',
  noSuchPack: 'There is no such pack.',
  noSuchSteriliser: 'There is no such steriliser.',
  noSuchIndicator: 'There is no such indicator in this load.',
  noSuchPlace: 'There is no such place.',
  noSuchCase: 'There is no such case.',
  changed: (number: string) => `Load ${number} was changed by someone else. Nothing was saved.`,
  wrongState: (number: string, state: LoadState, verb: string) =>
    `Load ${number} is ${LOAD_STATE_WORDS[state]}: you can’t ${verb} now.`,
  withdrawnSteriliser: (name: string) => `${name} is out of service.`,
  noSuchProgramme: (name: string, programme: string) => `${name} has no programme “${programme}”.`,
  openLoad: (steriliser: string, number: string) =>
    `Load ${number} is being made up for ${steriliser} already: put the packs into that one.`,
  running: (steriliser: string, number: string) =>
    `Load ${number} is running in ${steriliser}: end it first.`,
  empty: (number: string) => `There is nothing in load ${number}.`,
  packNotClosed: (name: string, state: PackState) =>
    `${name}: its pack is ${PACK_STATE_WORDS[state]}, not closed and waiting.`,
  inOtherLoad: (name: string, number: string) =>
    `${name} is in load ${number} already: take it out there first.`,
  setNotPacked: (code: string, step: string) => `${code} is ${step}: only a packed set goes into a load.`,
  otherPack: (code: string) =>
    `This is an old pack of ${code}: it was packed anew since. Scan the label on it now.`,
  oldCopy: (name: string, copy: number, last: number) =>
    `${name}: label copy ${copy} was replaced by copy ${last}. Find the newer label.`,
  notInLoad: (name: string, number: string) => `${name} is not in load ${number}.`,
  unfitStays: (name: string, as: UnloadedAs) =>
    `${name} was found ${UNLOADED_WORDS[as]}: its set is held, and it does not become sound again.`,
  resultStays: (kind: IndicatorKind, result: IndicatorResult) =>
    `The ${INDICATOR_WORDS[kind]} was read already: ${RESULT_WORDS[result]}. Add another one if it was read anew.`,
  reasonNeeded: 'Say why, in a few words.',
  reasonForCautions: 'There are cautions: say why the load may be accepted all the same.',
  tooLong: 'At most 400 characters.',
  proveFirst: 'Prove who you are again for this; a proof is good for two minutes.',
  surgeonNeeded: 'The operating surgeon of the named case must stand for it.',
  notOperating: (name: string, reference: string) =>
    `${name} is not the operating surgeon of case ${reference}.`,
  samePerson: 'Lead and surgeon are two people.',
  caseOver: (reference: string) => `Case ${reference} is over: name the case that needs the implants now.`,
  noExceptionNeeded: 'No implant waits for a biological result here: accept the load without an exception.',
  exceptionPacks: 'Name at least one pack with implants that waits in this load.',
  placeNeeded: 'Say where the packs go.',
  nameTaken: (name: string) => `There is another steriliser called ${name}.`,
  loadsOpen: (name: string, number: string) =>
    `Load ${number} of ${name} is not decided yet: decide it before the steriliser goes out of service.`,
  notHeld: 'This pouch is not held.',
  holdStays: 'Its own load failed: it is discarded or processed again, and no hold is lifted.',
  loadNotAccepted: 'Its load is not accepted.',
  waitsForBiological: (load: string) =>
    `It is an implant, and the biological result of load ${load} has not passed yet: it stays held until it has. Before that only the packs go that the exception at acceptance named. Take another meanwhile, or sterilise this one again.`,
  held: (failed: string, since: string | null) =>
    since === null
      ? `Load ${failed} failed, and no accepted load before it is on record.`
      : `Load ${failed} failed; the last accepted before it is ${since}.`,
  failedResult: (kind: IndicatorKind) => `The ${INDICATOR_WORDS[kind]} failed after the load was accepted.`,
};
