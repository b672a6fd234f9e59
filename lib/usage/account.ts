import type { ReturnOutcome } from '../caseLife/account';
import type { UseOutcome } from './act';
import { sourceKey, type UsedPiece, type UseState } from './state';

/** A line of a set that went into theatre. */
export interface SlotSource {
  kind: 'slot';
  setId: string;
  lineId: string;
  itemId: string;
  /** An instrument that is reprocessed: opened and not implanted, it comes back. */
  reusable: boolean;
  /** Fit pieces on record as it was packed; `null`: nobody has counted it. */
  recorded: number | null;
  /** At the last closed final count; `null`: not counted there. */
  counted: number | null;
}

/** Single packs of one heap, issued together. */
export interface PackSource {
  kind: 'pack';
  pickId: string;
  itemId: string;
  reusable: boolean;
  quantity: number;
  /** What was said at the return, but for what this record said there. */
  returns: readonly { id: string; outcome: ReturnOutcome; quantity: number }[];
}

export type TableSource = SlotSource | PackSource;

/**
 * The account of one source: out = back + implanted + discarded + not found + open. `out` and `back` of a slot are `null`
 * where nobody knows what it held.
 */
export interface SourceAccount {
  key: string;
  out: number | null;
  back: number | null;
  implanted: number;
  /** Opened and not implanted, unless it is reprocessed; dropped or damaged. */
  discarded: number;
  notFound: number;
  /** Issued, and nobody has said what became of it. */
  open: number;
  /** Said to be opened at the return, and not yet whether it was implanted; part of `open`. */
  openedUnsaid: number;
  /** Said to be handed back unopened, and its barrier not judged yet; part of `back`. */
  toJudge: number;
  /** More is said to be gone than there was. */
  beyond: number;
  /** Of a slot, against the final count: it comes out, it does not, or nothing was counted. */
  count: { verdict: 'comesOut' | 'differs' | 'notEstablished'; counted: number | null } | null;
}

/** The account of every source, in their order. */
export function accountOfUse(sources: readonly TableSource[], { pieces }: UseState): SourceAccount[] {
  const bySource = new Map<string, UsedPiece[]>();
  for (const piece of pieces) {
    const key = sourceKey(piece.source);
    bySource.set(key, [...(bySource.get(key) ?? []), piece]);
  }
  return sources.map((source) => {
    const own = bySource.get(sourceKey(source)) ?? [];
    return source.kind === 'slot' ? slotAccount(source, own) : packAccount(source, own);
  });
}

const sumOf = (pieces: readonly UsedPiece[], ...outcomes: UseOutcome[]): number =>
  pieces.reduce((sum, { outcome, quantity }) => (outcomes.includes(outcome) ? sum + quantity : sum), 0);

/** What is not named stays in its set and goes back with it; the final count says whether that is so. */
function slotAccount(source: SlotSource, own: readonly UsedPiece[]): SourceAccount {
  const implanted = sumOf(own, 'implanted');
  const discarded = sumOf(own, 'droppedOrDamaged') + (source.reusable ? 0 : sumOf(own, 'openedNotImplanted'));
  const notFound = sumOf(own, 'notFound');
  const gone = implanted + discarded + notFound;
  const { recorded, counted } = source;
  const back = recorded === null ? null : Math.max(0, recorded - gone);
  return {
    key: sourceKey(source),
    out: recorded,
    back,
    implanted,
    discarded,
    notFound,
    open: 0,
    openedUnsaid: 0,
    toJudge: 0,
    beyond: recorded === null ? 0 : Math.max(0, gone - recorded),
    count: {
      verdict:
        back === null || counted === null ? 'notEstablished' : back === counted ? 'comesOut' : 'differs',
      counted,
    },
  };
}

/**
 * Returns and entries speak of the same pieces where an entry names the return it makes clear, or where a pack handed back
 * unopened was judged afterwards. Of returns that could be either, one that is back unopened is the one handed back.
 */
function packAccount(source: PackSource, own: readonly UsedPiece[]): SourceAccount {
  const explained = new Map<string, number>();
  for (const { source: from, quantity } of own)
    if (from.kind === 'pack' && from.returnId !== null)
      explained.set(from.returnId, (explained.get(from.returnId) ?? 0) + quantity);
  const fresh = own.filter(({ source: from }) => from.kind === 'pack' && from.returnId === null);
  const handed = sumOf(fresh, 'returnedUnopened');
  const firm = fresh.reduce((sum, { quantity }) => sum + quantity, 0) - handed;
  const said = (outcome: ReturnOutcome) =>
    source.returns.reduce((sum, one) => (one.outcome === outcome ? sum + one.quantity : sum), 0);
  const returned = source.returns.reduce((sum, { quantity }) => sum + quantity, 0);
  const judgedBack = Math.min(handed, said('returnedUnopened'));
  // what is left out for them beside those handed back; a return beyond that can only be one of those
  const free = source.quantity - firm - handed;
  const judgedOther = Math.max(0, Math.min(handed - judgedBack, returned - judgedBack - Math.max(0, free)));
  const toJudge = handed - judgedBack - judgedOther;
  const openedBack = source.returns
    .filter(({ outcome }) => outcome === 'opened')
    .reduce((sum, { id, quantity }) => sum + Math.max(0, quantity - (explained.get(id) ?? 0)), 0);
  // of an instrument there is nothing more to say: it was opened, and is washed
  const openedUnsaid = source.reusable ? 0 : openedBack;
  const opened = sumOf(own, 'openedNotImplanted');
  const implanted = sumOf(own, 'implanted');
  const discarded = sumOf(own, 'droppedOrDamaged') + said('damaged') + (source.reusable ? 0 : opened);
  const notFound = sumOf(own, 'notFound') + said('notFound');
  const washed = source.reusable ? opened + openedBack : 0;
  const back = said('returnedUnopened') + said('cameBack') + toJudge + washed;
  const told = implanted + discarded + notFound + back;
  return {
    key: source.pickId,
    out: source.quantity,
    back,
    implanted,
    discarded,
    notFound,
    open: Math.max(0, source.quantity - told),
    openedUnsaid,
    toJudge,
    beyond: Math.max(0, told - source.quantity),
    count: null,
  };
}

/** Packs of which nothing is said yet, at the table or at the return: what a further entry may be about. */
export const freePacks = (account: SourceAccount): number => account.open - account.openedUnsaid;

export interface WholeAccount {
  /** Pieces of packs, and of the slots that are known; `slotsUnknown` more held nobody knows what. */
  out: number;
  back: number;
  implanted: number;
  discarded: number;
  notFound: number;
  open: number;
  slotsUnknown: number;
}

/** All sources together; a slot that nobody counted adds what left it to both sides. */
export function wholeAccount(accounts: readonly SourceAccount[]): WholeAccount {
  const whole = { out: 0, back: 0, implanted: 0, discarded: 0, notFound: 0, open: 0, slotsUnknown: 0 };
  for (const one of accounts) {
    const gone = one.implanted + one.discarded + one.notFound;
    whole.out += (one.out ?? gone) + one.beyond;
    whole.back += one.back ?? 0;
    whole.implanted += one.implanted;
    whole.discarded += one.discarded;
    whole.notFound += one.notFound;
    whole.open += one.open;
    if (one.out === null) whole.slotsUnknown += 1;
  }
  return whole;
}
