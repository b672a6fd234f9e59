import type { ReturnOutcome } from '../caseLife/account';
import type { KitDifference } from '../caseLife/check';
import type { LifeStage } from '../caseLife/life';
import { countWord, listWords } from './numbers';
import { momentWords } from './sets';
import { heldWords } from './stock';

/** How far a kit has come, in a word. */
export const STAGE_WORDS: Record<LifeStage, string> = {
  notBegun: 'not picked yet',
  picking: 'being picked',
  picked: 'picked, to be checked',
  checked: 'checked',
  issued: 'issued',
  inTheatre: 'in theatre',
  back: 'back',
  toPutBack: 'cancelled: to be put back',
  cancelled: 'cancelled',
};

export const STAGE_TONES: Record<LifeStage, 'good' | 'attention' | 'stop' | 'unknown' | 'neutral'> = {
  notBegun: 'neutral',
  picking: 'attention',
  picked: 'attention',
  checked: 'good',
  issued: 'good',
  inTheatre: 'good',
  back: 'neutral',
  toPutBack: 'attention',
  cancelled: 'neutral',
};

export const OUTCOME_OF_RETURN_WORDS: Record<ReturnOutcome, string> = {
  cameBack: 'came back, to be reprocessed',
  returnedUnopened: 'returned unopened',
  opened: 'opened',
  damaged: 'dropped or damaged',
  notFound: 'not found at the return',
};

type Instead = { lot: string | null; placeName: string | null } | null;

const lotWords = (lot: string | null): string => (lot === null ? '' : `, lot ${lot}`);

function insteadWords(instead: Instead): string {
  if (instead === null) return 'Put it aside, and work the list out again.';
  const where = instead.placeName === null ? '' : ` from ${instead.placeName}`;
  return `Put it aside and take${instead.lot === null ? ' the other pack' : ` lot ${instead.lot}`}${where}.`;
}

/** What can be wrong with the picking of a kit, and the way out. */
export const pickWords = {
  beginFirst: (thing: string) => `${thing} was not entered: begin first, then scan it again.`,
  mayNot: (name: string, what: string) => `${name} can’t ${what}.`,
  noSuchCase: 'There is no such case.',
  noSuchPick: 'There is no such pick.',
  noPlan: (reference: string) =>
    `No plan of ${reference} is confirmed: the operating surgeon confirms it, then there is a list to pick by.`,
  notNow: (reference: string, stage: LifeStage) =>
    `The kit of ${reference} is ${STAGE_WORDS[stage]}: this is not done with it now.`,
  changed: (reference: string) =>
    `The kit of ${reference} was changed by someone else meanwhile. Nothing was saved: look again.`,
  planChanged: (reference: string, from: number, to: number) =>
    `The plan of ${reference} changed: version ${to} is confirmed, and this list follows version ${from}. Work the list out again; what is no longer needed and what is still to fetch is shown then.`,
  idTaken: 'This id belongs to something else that was done. Do it again.',
  unknownSession: 'It can’t be told who did this: sign in, and do it again.',

  notOnList: (thing: string, reference: string, instead: string | null) =>
    instead === null
      ? `${thing} is not on the list of ${reference}. Put it back where it was; if the list is wrong, work it out again.`
      : `${thing} is not on the list of ${reference}: it asks for ${instead}. Put this one back where it was; if that one can’t be had, work the list out again.`,
  enough: (thing: string, reference: string) =>
    `${thing}: as many as the list of ${reference} asks for are picked. Put this one back.`,
  pickedAlready: (thing: string, by: string, at: string, now: string) =>
    `${thing} is with this kit already, picked by ${by} ${momentWords(at, now)}. Nothing was done twice.`,
  outOfService: (code: string) => `${code} is out of service. Take another copy the list names.`,
  noSuchThing: 'This names nothing in the store.',
  recalled: (name: string) =>
    `${name} is recalled: put it aside, it goes to nobody. The plan needs the surgeon’s word, or the list worked out again.`,
  packHeld: (name: string, lot: string | null, because: string, instead: Instead) =>
    `${name}${lotWords(lot)} is held, because ${heldWords(because)}. ${insteadWords(instead)}`,
  letOutForAnother: (name: string, reference: string) =>
    `${name} was let out for case ${reference} alone, before the result of its load was known. Put it aside, and take another pack.`,
  packNotSterile: (name: string) => `This ${name} is not sterile: take one from a closed sterile pack.`,
  packPastUseBy: (
    name: string,
    lot: string | null,
    useBy: string,
    reference: string,
    caseDate: string,
    instead: Instead,
  ) =>
    `${name}${lotWords(lot)} is past use-by on the day of ${reference}: good through ${useBy}, the case is on ${caseDate}. ${insteadWords(instead)}`,
  noneLeft: (name: string, free: number, place: string | null) =>
    `${name}: ${free === 0 ? 'none is' : `only ${countWord(free)} ${free === 1 ? 'is' : 'are'}`} free${place === null ? '' : ` in ${place}`} on record; the rest is picked for other cases, or was never taken in. Count the shelf, or take another lot.`,
  lotUnknown: (name: string, lot: string) =>
    `Lot ${lot} of ${name} is on no shelf on record. The stock keeper takes it in first; take a lot that is on record meanwhile.`,
  lotNotSaid: (name: string) =>
    `The code of this ${name} does not say its lot, and several lots lie in store. Scan the shelf’s label, or choose the lot on the list.`,
  packOfOther: (code: string) =>
    `This label is of an earlier pack of ${code}: take the label off, and scan the one on its wrap.`,

  putBackAlready: (by: string) => `It was put back by ${by} already.`,
  issuedAlready: 'It has left the store with the kit: what comes back of it is entered at the return.',
  leftNeedsWhy: (left: number) =>
    `${left === 1 ? 'One thing' : `${left} things`} on the list ${left === 1 ? 'is' : 'are'} not picked. Say why it goes without, or pick on.`,
  surplusFirst: (things: readonly string[]) =>
    `No longer needed and still with the kit: ${listWords(things)}. Put it back first.`,
  nothingPicked: 'Nothing is picked yet.',

  checkYourOwn: (name: string) => `${name} picked for this kit: another person checks it.`,
  noSuchCheck: 'There is no such check.',
  notYourCheck: (name: string) => `This check is ${name}’s.`,
  checkClosed: 'This check is closed.',
  checkOvertaken: 'The kit was changed since this check began: begin the check again.',
  pending: (missing: number) =>
    `${missing === 1 ? 'One entry is' : `${missing} entries are`} not saved yet: wait until all are.`,
  nothingSeen: 'Nothing is scanned yet: scan everything that lies with the kit.',
  proofNeeded: 'Prove who you are again for this; a proof is good for two minutes.',
  keepIssuing: (reference: string) =>
    `The kit of ${reference} does not leave the store as it is. Put right what is named, or take the thing out of the kit.`,

  outcomeNotOpen: (thing: string) => `That can’t be said of ${thing}.`,
  moreThanOut: (thing: string, out: number) =>
    out === 0
      ? `Nothing of ${thing} is out any more.`
      : `Only ${countWord(out)} of ${thing} ${out === 1 ? 'is' : 'are'} still out.`,
  notIssued: (thing: string) => `${thing} has not left the store.`,
  notSterileAnyMore: (thing: string) =>
    `${thing} can’t go back as sterile: its load is not accepted any more, or its pack was opened. It comes back to be reprocessed.`,
  openedAlready: (thing: string) => `${thing} was counted open in theatre: it comes back to be reprocessed.`,
  notFoundNeedsNote: 'Say what was done to find it.',
  stillOnKit: (set: string, reference: string) =>
    `${set} is picked for ${reference} and lies with its kit: put it back first.`,
  pouchOnKit: (number: string, reference: string) =>
    `Pouch ${number} is picked for ${reference} and lies with its kit: put it back first.`,
};

/** One difference between picking and check, told with the thing’s name. */
export function differenceWords({ picked, seen }: KitDifference, name: string): string {
  if (seen === 0)
    return `${name}: picked ${picked === 1 ? '' : `${picked}, `}but not seen at the check.`.replace(
      '  ',
      ' ',
    );
  if (picked === 0) return `${name}: seen at the check, but nobody picked it for this case.`;
  return `${name}: ${picked} picked, ${seen} seen at the check.`;
}
