import type { MoveAct } from '../pieces/move';
import type { AdjustReason } from '../stock/adjustment';
import type { NotTaken } from '../stock/firstOut';
import type { StockHold } from '../stock/hold';
import { heldWords } from './stock';

/** The order of taking, in a word or two. */
export const turnWords = (turn: number): string =>
  turn === 1 ? 'take first' : turn === 2 ? 'then this' : `after ${turn - 1} others`;

export const NOT_TAKEN_WORDS: Record<NotTaken, string> = {
  held: 'held',
  pastUseBy: 'past use-by',
  notCurrent: 'withdrawn or recalled',
  noneFree: 'none free',
};

export const ADJUST_WORDS: Record<AdjustReason, { label: string; note: string }> = {
  found: { label: 'Found', note: 'more lie there than are on record' },
  notFound: { label: 'Not found', note: 'fewer lie there than are on record' },
  damaged: { label: 'Dropped or damaged', note: 'into the bin' },
  opened: { label: 'Opened, and not for a case', note: 'into the bin' },
  pastUseBy: { label: 'Past use-by, discarded', note: 'into the bin' },
  sentBack: { label: 'Sent back', note: 'to its owner or supplier; say with which paper' },
  enteredTooFew: { label: 'Too few were entered', note: 'counts as received, not as found' },
  enteredTooMany: { label: 'Too many were entered', note: 'counts as never received, not as lost' },
};

/** What a heap may be held for by hand, as it follows “because”. */
export const holdChoices = (reasons: readonly StockHold[]): { value: StockHold; label: string }[] =>
  reasons.map((value) => ({ value, label: heldWords(value) }));

const MOVE_WORDS: Record<MoveAct, string> = {
  opening: 'lay there when the record began',
  received: 'received',
  shelved: 'came sterile from our own load',
  moved: 'moved',
  refilled: 'put into a set',
  carried: 'carried to another line',
  takenOut: 'came out of a set',
  issued: 'issued to a case',
  cameBack: 'back unopened from a case',
  implanted: 'implanted',
  wasted: 'discarded',
  notFound: 'not found',
  found: 'found',
  explained: 'explained',
  setAside: 'put aside',
  repaired: 'back from repair',
  discarded: 'discarded',
  sentBack: 'sent back',
};

const REASON_WORDS: Record<string, string> = {
  damaged: 'dropped or damaged',
  opened: 'opened, and not for a case',
  pastUseBy: 'past use-by',
  shelf: 'on the shelf',
  toOwner: 'to its owner or supplier',
};

/** What a move was, in words: `not found, on the shelf`. */
export function moveWords(act: MoveAct, reason: string | null): string {
  if (reason === 'enteredWrongly')
    return act === 'sentBack' ? 'too many had been entered' : 'too few had been entered';
  if (act === 'moved' && reason !== null) return `held, because ${heldWords(reason)}`;
  const words = MOVE_WORDS[act];
  if (reason === null || reason === '') return words;
  return `${words}, ${REASON_WORDS[reason] ?? reason}`;
}

/** `6 pieces, of them 2 with kits and 1 that travels with a set`. */
export function piecesWords({
  all,
  onKits,
  travelling,
}: {
  all: number;
  onKits: number;
  travelling: number;
}): string {
  const apart = [
    onKits === 0 ? null : `${onKits} with kits`,
    travelling === 0 ? null : `${travelling} promised to travel with sets`,
  ].filter((part) => part !== null);
  const pieces = all === 1 ? '1 piece' : `${all} pieces`;
  return apart.length === 0 ? pieces : `${pieces}, of them ${apart.join(' and ')}`;
}
