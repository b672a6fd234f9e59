import { printedHead } from '../ledger/heads';
import type { LedgerFault } from '../ledger/verify';
import { listWords } from './numbers';

const figure = (count: number) => count.toLocaleString('en-GB');
const moment = (at: string | null) => (at === null ? 'printed on paper' : `written at ${at}`);
const entries = (count: number) => (count === 1 ? '1 entry' : `${figure(count)} entries`);

/** What is wrong with a ledger, in a sentence for whoever must act on it. */
export function ledgerFaultSentence(fault: LedgerFault): string {
  switch (fault.kind) {
    case 'number':
      return `Entry ${figure(fault.seq)} stands where entry ${figure(fault.expected)} should be: entries were taken out, put in or moved.`;
    case 'previous':
      return `Entry ${figure(fault.seq)} does not follow from the entry before it.`;
    case 'content':
      return `Entry ${figure(fault.seq)} was changed after it was written.`;
    case 'form':
      return `Entry ${figure(fault.seq)} is of a form it cannot be of.`;
    case 'seal':
      return `The text of an entry before entry ${figure(fault.seq)} was changed, or the seal that closes the earlier entries is not there.`;
    case 'headDiffers':
      return `Entry ${figure(fault.head.seq)} is another one than when its head was ${moment(fault.head.at)}: the ledger was written anew.`;
    case 'headBeyond':
      return `The ledger ends at entry ${figure(fault.last)}, and a head of entry ${figure(fault.head.seq)} was ${moment(fault.head.at)}: entries were cut off, or an older copy was put in its place.`;
    case 'headOfAnother':
      return `A head of entry ${figure(fault.head.seq)}, ${moment(fault.head.at)}, is of a ledger with another first entry: this ledger was written anew, or another database uses the same file of heads.`;
    case 'headBackwards':
      return `A head of entry ${figure(fault.head.seq)}, ${moment(fault.head.at)}, comes after one with a higher number: an older copy was put in place of the ledger and written on.`;
  }
}

/** What the command prints. */
export const ledgerVerifyWords = {
  read: (count: number, heads: number) =>
    `${entries(count)} read, ${heads === 1 ? '1 head' : `${figure(heads)} heads`} compared.`,
  head: (head: { seq: number; hash: string }) =>
    `The newest is entry ${printedHead(head)} (whole hash ${head.hash}).`,
  empty: 'The ledger has no entry.',
  noHeads: (place: string) =>
    `No head was found at ${place}: without one, entries cut off at the end cannot be seen.`,
  more: (count: number) => `${figure(count)} faults more.`,
  guards: (names: readonly string[]) =>
    `The database has lost what keeps its ledger from being changed: ${listWords(names)}.`,
  damaged: (said: string) => `The database file is damaged: ${said}.`,
  namesOff: (count: number) =>
    `${entries(count)} would not be found on screen by what they name: the list of names was changed.`,
  unreadableHeads: (lines: readonly number[], place: string) =>
    `${place} has lines that are no heads: ${listWords(lines.slice(0, 10))}${lines.length > 10 ? ' and more' : ''}.`,
  headsGone: (count: number, place: string) =>
    `${count === 1 ? '1 head that was' : `${figure(count)} heads that were`} written to ${place} ${count === 1 ? 'is' : 'are'} not there: lines were taken out, or it is another file.`,
  whole: 'Nothing was changed: every entry follows from the one before it.',
  broken: 'This ledger is not as it was written.',
};

interface Findings {
  damaged: string | null;
  guardsGone: readonly string[];
  faults: readonly LedgerFault[];
  more: number;
  namesOff: number;
  unreadableHeads: readonly number[];
  headsGone: number;
}

/** All that an audit found wrong, a sentence each; empty where nothing is. `place` is where the heads are kept. */
export function ledgerFindings(audit: Findings, place: string): string[] {
  const words = ledgerVerifyWords;
  return [
    ...(audit.damaged === null ? [] : [words.damaged(audit.damaged)]),
    ...(audit.guardsGone.length === 0 ? [] : [words.guards(audit.guardsGone)]),
    ...audit.faults.map(ledgerFaultSentence),
    ...(audit.more === 0 ? [] : [words.more(audit.more)]),
    ...(audit.namesOff === 0 ? [] : [words.namesOff(audit.namesOff)]),
    ...(audit.unreadableHeads.length === 0 ? [] : [words.unreadableHeads(audit.unreadableHeads, place)]),
    ...(audit.headsGone === 0 ? [] : [words.headsGone(audit.headsGone, place)]),
  ];
}
