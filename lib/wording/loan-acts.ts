import type { LoanNext } from '../loans/nextStep';
import type { LoanState } from '../loans/states';
import { LOAN_STATE_WORDS, nextWords } from './loans';
import { listWords } from './numbers';

/** What can be wrong with an act on a loan, and the way out. */
export const loanWords = {
  needed: 'Say it: nothing stands here.',
  tooLong: (most: number) => `At most ${most} characters.`,
  wholeNumber: 'A whole number.',
  caseOrPeriod: 'Name the case it is for, or the first and the last day of a period; not both.',
  untilNeeded: 'State the last day of the period.',
  untilBefore: 'The last day comes before the first.',

  mayNotAsk: (name: string) => `${name} can’t ask a lender for a loan.`,
  mayNotKeep: (name: string) => `${name} can’t do this with a loan: the loan keeper can.`,
  mayNotCount: (name: string) => `${name} can’t count loans.`,
  mayNotDeclare: (name: string) => `${name} can’t declare a loan decontaminated: the bench can.`,
  mayNotLenders: (name: string) => `${name} can’t change lenders.`,
  noSuchLoan: 'There is no such loan.',
  noSuchLender: 'There is no such lender.',
  lenderTaken: (name: string) => `There is a lender of this name already: ${name}.`,
  lenderChanged: (name: string) => `${name} was changed by someone else. Nothing was saved.`,
  lenderInUse: (name: string, numbers: readonly string[]) =>
    `${name} still has ${listWords(numbers)} with us: it goes out of use once they are over.`,
  lenderOut: (name: string) => `${name} is out of use: bring it back into use, or choose another.`,
  noSuchCase: 'There is no such case on the list: choose another.',
  caseOver: (reference: string) => `Case ${reference} is over or cancelled: choose another.`,
  noSuchConfiguration: 'There is no such configuration in force: choose another, or say it in words alone.',
  changed: (number: string) => `${number} was changed by someone else. Nothing was saved: look at it again.`,
  notNow: (number: string, state: LoanState) =>
    `${number} is ${LOAN_STATE_WORDS[state]}: this can’t be done with it now.`,
  notYet: (number: string, next: LoanNext) => `${number} is not so far. First: ${nextWords(next)}.`,
  future: 'That is still to come: enter it when it has happened.',
  beforeAsked: 'That is before it was asked for.',
  noList: 'It has no content list yet.',
  listStands: (number: string) => `The list of ${number} stands: it was counted or tagged against.`,
  noConfigurationAsked: 'It was asked for in words alone: import the lender’s list.',
  otherTrays: (listed: number, arrived: number) =>
    `The list has ${listed} ${listed === 1 ? 'tray' : 'trays'}, and ${arrived} arrived: one of the two is wrong, or not all is here.`,
  noSuchPlace: 'There is no such place in use: choose another.',
  eachTrayOnce: 'Give each tray of the loan one mass, once.',
  nothingKnownInTray: (tray: number) =>
    `Nothing in tray ${tray} is in the catalogue, so nobody could count it at the bench: add its items to the catalogue and bring in the list again.`,
  linesBeside: (lines: number) =>
    `${lines === 1 ? 'one line is' : `${lines} lines are`} not in the catalogue and counted with the loan only`,
  kindName: (lender: string, number: string, tray: number) => `${lender}, ${number}, tray ${tray}`,
  trayName: (tray: number) => `Tray ${tray}`,
  kindNote: (number: string) =>
    `As the lender’s list of ${number} says. A must-have class that the list does not state counts as class 1.`,
  tagTaken: (tag: string) => `There is a set ${tag} already.`,
  nothingToCount: (purpose: string) => `There is nothing to ${purpose} now.`,
  lineMissing: 'not counted: state it, with 0 where there is none.',
  lineTwice: 'stated twice.',
  lineUnknown: 'not a line that is to be counted now.',
  checkByAnother: 'You made the first count: another person checks it, without your figures.',
  notAskable: (name: string) =>
    `${name} can’t decide this: ask the operating surgeon, the theatre manager or the decontamination lead.`,
  noSuchPerson: 'There is no such person here.',
  askedAlready: (name: string) => `${name} was asked that already and has not answered.`,
  nothingToAsk: 'There is nothing to decide of that kind.',
  noSuchQuestion: 'There is no such question.',
  notAskedOfYou: (name: string) => `This was asked of ${name}, who alone answers it.`,
  answeredAlready: 'This was answered already.',
  promisedTo: (code: string, reference: string) =>
    `${code} is promised to case ${reference}: take that back on the theatre list first.`,
  proveFirst: 'Prove who you are again, at the moment you say this.',
  declaredAlready: (number: string) => `${number} is declared and goes: what was used of it stands.`,
  wentBackAs: (number: string) => `Gone back to its lender with ${number}.`,
  notUsedIn: (reference: string) => `No tray of this loan was in theatre for ${reference}.`,
  moreThanCame: (name: string, came: number) => `${name}: ${came} came, so no more can have been used.`,
  noSuchDiscrepancy: 'The counts show nothing of that kind on this line.',
  claimedAlready: 'That is claimed already.',
  noSuchClaim: 'There is no such claim.',
  claimOver: 'That claim is settled.',
  stillMissing: (code: string, papers: readonly string[]) =>
    `${code} is on loan and its ${listWords(papers)} ${papers.length > 1 ? 'are' : 'is'} not here: it stays held until the loan keeper has entered ${papers.length > 1 ? 'them' : 'it'}.`,
  notUnpacked: (code: string, number: string) =>
    `${code} is on loan and ${number} is not unpacked yet: weigh and count it on its own page first.`,
  leaving: (code: string, number: string) =>
    `${code} goes back to its lender with ${number}: it is not used or promised any more.`,
  loanGoneBack: (code: string) => `${code} has gone back to its lender: ask for it again.`,
};
