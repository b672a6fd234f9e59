import type { ItemId } from '../identity/ids';
import { never } from '../identity/result';
import type { Approver, ShortAsk, ShortFinding, ShortRule } from '../sets/short/ask';
import type { Lapse, NotCovered } from '../sets/short/decision';
import { capitalised, countWord, listWords } from './numbers';

type Name = (id: ItemId) => string;

/** Who stands for a short set; at the beginning of a sentence. */
export const APPROVER_WORDS: Record<Approver, string> = {
  technician: 'A technician',
  decontaminationLead: 'The decontamination lead',
  theatreLead: 'The theatre manager',
  operatingSurgeon: 'The operating surgeon of the case',
};

/** What the table asks for, row by row; shown beside every finding as its rule. */
export const SHORT_RULE_WORDS: Record<ShortRule, string> = {
  notEstablished: 'Not counted: it never goes.',
  homeless: 'A surplus or foreign piece: not complete until its home is found.',
  classOne:
    'Class 1: held. Only theatre manager and operating surgeon together, for one named case, lapsing after it.',
  classTwo:
    'Class 2: the decontamination lead decides; the named substitute travels with the set as a sterile pouch.',
  backUp: 'Classes 3 and 4: a technician may pack; label and sheet say SHORT; a refill job opens.',
};

export const shortWords = {
  notPermitted: (name: string, what: string) => `${name} can’t ${what}.`,
  noSuchSet: 'There is no such set.',
  noSuchCase: 'There is no such case.',
  nothingShort: (code: string) => `Nothing is short in ${code}: pack it.`,
  technicianMay: (code: string) =>
    `Only back-ups and conveniences are short in ${code}: pack it, and its label says SHORT. Nobody has to decide.`,
  neverGoes: (code: string) =>
    `${code} can’t go as it is, whoever asks: count it whole, and find the home of every piece that does not belong.`,
  notWaiting: (code: string) => `${code} does not wait for a decision: ask for one at the bench first.`,
  notOnBench: (code: string) => `${code} is not on the bench: a decision is asked for where it is counted.`,
  decidedAlready: (code: string) =>
    `It is decided already that ${code} may go; nothing more has become short since.`,
  caseNeeded: 'Name the case it goes for: class 1 is short, so it goes for one case only.',
  noCaseHere: 'It is short in class 2 only: it goes for no one case in particular. Leave the case out.',
  caseOver: (reference: string) => `${reference} is over: name a case that is still to come.`,
  notTheSurgeon: (name: string, reference: string, surgeon: string) =>
    `${name} does not operate on ${reference}; ${surgeon} does. Only the operating surgeon can stand for it.`,
  notTheRole: (name: string, approver: Approver) =>
    `${name} can’t stand for this as ${APPROVER_WORDS[approver].toLowerCase()}.`,
  approverNeeded: (approver: Approver) => `${APPROVER_WORDS[approver]} has to stand for this as well.`,
  approverTwice: (approver: Approver) => `${APPROVER_WORDS[approver]} is named twice: once is enough.`,
  approverNotAsked: (approver: Approver) =>
    `${APPROVER_WORDS[approver]} is not asked here: leave this approval out.`,
  samePerson: 'One person can’t stand for two: theatre manager and operating surgeon decide together.',
  notProven: (name: string) =>
    `${name} has not proven it, or too long ago: prove again that “I send it short”.`,
  reasonNeeded: 'Say why it goes short.',
  reasonLong: 'The reason is longer than 400 characters.',
  standInGone: (name: string) =>
    `${name}: this pouch is not at hand any more (taken, held, past use-by, or promised to another set).`,
  notASubstitute: (name: string, missing: string) => `${name} is no approved substitute for ${missing}.`,
  standInTooFew: (name: string, pieces: number) =>
    `${name}: ${pieces === 1 ? 'there is only one' : `there are only ${countWord(pieces)}`} of these.`,
  standInsNeeded: (name: string, missing: number, named: number) =>
    `${name}: ${countWord(missing)} ${missing === 1 ? 'is' : 'are'} missing, and ${named === 0 ? 'nothing is' : `${countWord(named)} ${named === 1 ? 'is' : 'are'}`} named to stand in. Name one substitute for each missing piece.`,
  notShortThere: 'This line is not a class 2 line below its minimum: nothing has to stand in for it.',
};

/** What is short, in one sentence with its figures. */
export function shortSentence(finding: ShortFinding, name: Name): string {
  switch (finding.rule) {
    case 'notEstablished':
      return `${name(finding.itemId)} is not counted.`;
    case 'homeless':
      return finding.kind === 'surplus'
        ? `${name(finding.itemId)}: ${finding.pieces} over.`
        : `${finding.pieces} × ${name(finding.itemId)} belongs to no line of this set.`;
    case 'classOne':
      return `${belowWords(finding, name)}${finding.damaged ? ' Pieces of it were put aside as damaged.' : ''}`;
    case 'classTwo': {
      const lacking = finding.missing - finding.standIns.length;
      return `${belowWords(finding, name)} ${lacking === 0 ? 'A substitute is at hand for each.' : lackingWords(finding, name, lacking)}`;
    }
    case 'backUp':
      return `${name(finding.itemId)}: ${finding.found} of ${finding.expected}. Nothing stops for it.`;
    default:
      return never(finding);
  }
}

function belowWords(
  {
    itemId,
    found,
    minimum,
  }: Pick<Extract<ShortFinding, { rule: 'classOne' }>, 'itemId' | 'found' | 'minimum'>,
  name: Name,
): string {
  return `${name(itemId)}: ${found}, and at least ${minimum} must be there.`;
}

function lackingWords(
  { substitutes }: Extract<ShortFinding, { rule: 'classTwo' }>,
  name: Name,
  lacking: number,
): string {
  const what = substitutes.length === 0 ? 'no substitute is named' : listWords(substitutes.map(name), 'or');
  return substitutes.length === 0
    ? `Its configuration names no substitute, and no sterile pouch of it is at hand.`
    : `Nothing stands in for ${countWord(lacking)}: no sterile pouch of it, or of ${what}, is at hand.`;
}

/** Who has to do what, over all findings. */
export function askWords(ask: ShortAsk): { who: string; next: string; tone: 'good' | 'attention' | 'stop' } {
  switch (ask.asks) {
    case 'nothing':
      return { who: 'Nothing is short', next: 'It may be packed.', tone: 'good' };
    case 'technician':
      return {
        who: 'A technician may pack it, marked SHORT',
        next: 'Label and sheet say SHORT; a refill job opens for each line.',
        tone: 'attention',
      };
    case 'nobody':
      return {
        who: 'Nobody may send it like this',
        next: 'Count what is not counted, and find the home of every piece that does not belong.',
        tone: 'stop',
      };
    case 'approvers':
      return {
        who: `${capitalised(listWords(ask.approvers.map((one) => APPROVER_WORDS[one].toLowerCase())))} ${ask.approvers.length === 1 ? 'decides' : 'decide together'}`,
        next: ask.oneCase
          ? 'It goes for one named case only, and the decision lapses after it.'
          : 'A named substitute travels with the set for each missing piece.',
        tone: ask.oneCase ? 'stop' : 'attention',
      };
    default:
      return never(ask.asks);
  }
}

export const LAPSE_WORDS: Record<Lapse, string> = {
  ended: 'It was ended.',
  caseOver: 'The case it was made for is over.',
  caseGone: 'The case it was made for is no longer booked.',
  anotherSurgeon: 'Another surgeon operates now than the one who stood for it.',
};

export function notCoveredWords(open: NotCovered, name: Name): string {
  switch (open.kind) {
    case 'moreIsShort':
      return `More is short than was decided: ${name(open.itemId as ItemId)}.`;
    case 'standIns':
      return 'A substitute that was to travel with it is no longer at hand, or no longer enough.';
    case 'approverLacking':
      return `${APPROVER_WORDS[open.approver]} has to stand for it as well.`;
    default:
      return never(open);
  }
}
