import type { CasePart } from '@/lib/trace/lotTrace';
import type { RecallTask } from '@/lib/trace/recall';
import { countWord, listWords } from './numbers';
import { TRACE_OUTCOME_WORDS } from './trace';

/** Stands on every screen and page of a recall that is rehearsed. */
export const REHEARSAL = 'REHEARSAL';

export const TASK_WORDS: Record<RecallTask, string> = {
  lookAtCases: 'Look at your cases that had it, or may have had it',
  takeOffShelf: 'Take it off the shelf, and keep it apart',
  keepSetsHeld: 'Keep the sets that have it from going anywhere',
  know: 'Know of it',
};

const pieces = (count: number) => `${count} ${count === 1 ? 'piece' : 'pieces'}`;
const outcomeWord = (outcome: CasePart['outcome']) =>
  outcome === 'open' ? 'issued, outcome not entered' : TRACE_OUTCOME_WORDS[outcome];

export const recallWords = {
  /** @param set its code; `null`: single packs */
  reason: (set: string | null, outcome: CasePart['outcome'], why: string) =>
    `${set === null ? 'Single packs' : `From ${set}`}, ${outcomeWord(outcome)}: ${why}`,
  ofItem: (act: 'implanted' | 'wasted' | 'notFound', count: number) =>
    `${pieces(count)} ${TRACE_OUTCOME_WORDS[act]}.`,
  setWent: (times: number) => (times === 1 ? 'The set went to it.' : `The set went to it ${times} times.`),
  packWent: (name: string, number: string, load: string) =>
    `${name}, pack ${number} of load ${load}, went to it.`,

  holdNote: (number: string, reason: string) => `Recall ${number}: ${reason}`.slice(0, 400),
  mayNot: (what: string) => `Your role may not ${what}.`,
  noSuch: 'There is no such recall.',
  nothingCalled: 'There is nothing by that name to call back: look at what was chosen.',
  openAlready: (number: string) => `It is called back already, by recall ${number}.`,
  reasonNeeded: 'Say why it is called back.',
  tooLong: (most: number) => `Say it in no more than ${most} characters.`,
  noteNeeded: 'Say what was found and done, so that it may be closed.',
  closedAlready: 'This recall is closed.',
  changed: 'Somebody else saved meanwhile: look at the recall as it stands.',
  secondIsSame: 'The second person must be another.',
  proveFirst: 'Both people prove who they are, and say they close this recall.',
  balanceBlind:
    'You count a set that may have some of it: the balance is not shown to you until you have closed your count.',
  caseBlind:
    'A set you count went to this case: how much it had, and why, is not shown to you until you have closed your count.',
  countedBlind: 'You count this set: what lies in it, and what its records say, is not shown to you.',
  noTask: 'Nothing of this recall waits for you.',
  rehearsalNote:
    'This is a rehearsal: nothing is held, and everybody who is told is told so. What it reaches is what a recall would reach now.',

  /** `held 3 sets and 2 heaps`. */
  held: (sets: number, heaps: number) =>
    sets + heaps === 0
      ? 'nothing to hold'
      : listWords([
          ...(sets > 0 ? [`${countWord(sets)} ${sets === 1 ? 'set' : 'sets'}`] : []),
          ...(heaps > 0 ? [`${countWord(heaps)} ${heaps === 1 ? 'heap' : 'heaps'} on the shelf`] : []),
        ]),
};

export const BALANCE_WORDS = {
  caption:
    'In pieces. Where lots lay mixed, a figure is known between two bounds; together they come to what was received.',
  received: 'Received',
  implanted: 'Implanted',
  wasted: 'Opened or dropped, not implanted; discarded',
  held: 'Here, to be held: on the shelf, in slots, with cases not yet entered',
  returned: 'Sent back to its owner',
  unaccounted: 'Unaccounted for',
  notFound: 'of it not found at a step',
  setAside: 'of it set aside as unfit',
  lotLost: 'of it taken out of a slot with its lot not read',
};

export const recallPaperWords = {
  kind: (isRehearsal: boolean) => (isRehearsal ? `${REHEARSAL}: recall` : 'Recall'),
  rehearsalCaution: `${REHEARSAL}: nothing was held by this, and nobody needs to act on it.`,
  facts: {
    opened: 'Opened',
    by: 'By',
    reference: 'Notice',
    state: 'Stands',
    confirmed: 'Cases confirmed',
    possible: 'Cases possible',
    excluded: 'Cases excluded',
    held: 'Held by it',
  },
  none: 'none',
  open: 'open',
  closed: (at: string, by: string, other: string) => `closed ${at} by ${by} and ${other}`,
  why: 'Why',
  closedBecause: 'Closed because',
  cases: 'Cases',
  casesNote: 'opaque references only; what is known between bounds shows the least and the most',
  noCases: 'No case on record had any of it.',
  notAll: 'NOT ALL OF THEM',
  /** @param file what the file with every case is called */
  firstOf: (shown: number, of: number, file: string) =>
    `The first ${shown} of ${of} cases, the confirmed ones before all others. Every one is in the file ${file}, which the screen of this recall gives.`,
  columns: { case: 'Case', date: 'Date', surgeon: 'Surgeon', stands: 'Stands', why: 'Why' },
  fileColumns: { recall: 'Recall', least: 'Least pieces', most: 'Most pieces' },
  balance: 'Balance',
  balanceNote: 'in pieces',
  balanceColumns: { term: 'Of what was received', pieces: 'Pieces' },
  holds: 'Held as it was opened',
  notShown: 'not shown',
  noHolds: 'Nothing was held by it.',
  holdColumns: { what: 'What', pieces: 'Pieces', now: 'Now' },
  heldStill: 'held',
  notHeld: 'no longer held',
  contradiction: 'NOT ESTABLISHED',
  tasks: 'Who was asked, and said so',
  taskColumns: { person: 'Person', task: 'Asked to', when: 'Acknowledged', note: 'Note' },
  notYet: 'not yet',
  signed: { one: 'Closed by', two: 'And by' },
};
