import { z } from 'zod';
import { entryId, itemId, lineId, pickId, reasonId, returnId, scanId, setId } from '../identity/ids';
import { plainDate } from '../quantities/plainDate';

/** What became of a piece. Whatever was opened never goes back to stock. */
export const useOutcome = z.enum([
  'implanted',
  'openedNotImplanted',
  'returnedUnopened',
  'droppedOrDamaged',
  'notFound',
]);
export type UseOutcome = z.infer<typeof useOutcome>;

/** At which step a piece was not found. */
export const lostStep = z.enum(['atOpening', 'during', 'atCount', 'comingBack']);
export type LostStep = z.infer<typeof lostStep>;

/**
 * Where a piece came from: a slot of a set that is in theatre for the case, or single packs issued to it. `returnId` where
 * the pack was said to be opened at the return already, and this says what it became.
 */
export const useSource = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('slot'), setId, lineId }),
  z.strictObject({ kind: z.literal('pack'), pickId, returnId: returnId.nullable() }),
]);
export type UseSource = z.infer<typeof useSource>;

/** Where it went, by the confirmed plan: as a planned plate, into a hole of one, or as a free screw. */
export const usePlace = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('plate'), plate: z.string().max(8) }),
  z.strictObject({ kind: z.literal('hole'), plate: z.string().max(8), hole: z.string().max(40) }),
  z.strictObject({ kind: z.literal('free'), screw: z.string().max(8) }),
]);
export type UsePlace = z.infer<typeof usePlace>;

/**
 * What is known of its lot: read at the table; the one its pack was issued as, which nobody read again; or none, as of a
 * piece out of a screw rack, where its set and the load of that set are all there is.
 */
export const useLot = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('read'),
    lot: z.string().trim().min(1).max(40),
    useBy: plainDate.nullable(),
  }),
  z.strictObject({ kind: z.literal('asIssued') }),
  z.strictObject({ kind: z.literal('setAndLoad') }),
]);
export type UseLot = z.infer<typeof useLot>;

/** When a case lost time. */
export const delayStep = z.enum(['beforeStart', 'layingUp', 'during', 'atCount', 'afterwards']);
export type DelayStep = z.infer<typeof delayStep>;

/** What a delay was about, where it was about a thing. */
export const delayAbout = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('set'), setId }),
  z.strictObject({ kind: z.literal('item'), itemId }),
]);
export type DelayAbout = z.infer<typeof delayAbout>;

/** Why a piece was not to be opened. */
export const openingBar = z.enum(['pastUseBy', 'held', 'recalled']);
export type OpeningBar = z.infer<typeof openingBar>;

const because = z.string().trim().min(1, 'say why').max(400, 'at most 400 characters');
const note = z.string().trim().min(1, 'say what').max(400, 'at most 400 characters');

/** Everything that is said in a record of use, one act an entry. Nothing is changed: what was wrong is taken back. */
export const useAct = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('piece'),
    source: useSource,
    itemId,
    quantity: z.number('a whole number').int('whole pieces only').min(1).max(99, 'at most 99'),
    outcome: useOutcome,
    /** For `notFound` alone. */
    lostAt: lostStep.nullable(),
    place: usePlace.nullable(),
    lot: useLot,
    /** It was opened although it was not to be, and whoever entered it knew. */
    despite: z.array(openingBar).max(3),
    note: note.nullable(),
    /** Needed once the record is closed. */
    because: because.nullable(),
  }),
  /** Why what an entry says was wasted: the newest of an entry counts. */
  z.strictObject({
    kind: z.literal('reason'),
    entryId,
    /** One of the hospital's own; `null`: not stated after all. */
    reasonId: reasonId.nullable(),
    because: because.nullable(),
  }),
  /** The case lost time. */
  z.strictObject({
    kind: z.literal('delay'),
    /** `null`: nobody knows how many. */
    minutes: z
      .number('whole minutes')
      .int('whole minutes')
      .min(1, 'at least 1 minute')
      .max(1_440, 'at most a day')
      .nullable(),
    /** One of the hospital's own; `null`: not stated. */
    reasonId: reasonId.nullable(),
    step: delayStep.nullable(),
    about: delayAbout.nullable(),
    note: note.nullable(),
    because: because.nullable(),
  }),
  z.strictObject({
    kind: z.literal('takenBack'),
    entryId,
    because: because.nullable(),
  }),
]);
export type UseAct = z.infer<typeof useAct>;
export type PieceAct = Extract<UseAct, { kind: 'piece' }>;
export type DelayAct = Extract<UseAct, { kind: 'delay' }>;

/** An act as it is sent: the id is made where it is entered, so that sending it again enters it once. */
export const sentUseEntry = z.strictObject({
  id: entryId,
  act: useAct,
  scanId: scanId.nullable(),
  doneAt: z.iso.datetime({ precision: 3 }),
});
export type SentUseEntry = z.infer<typeof sentUseEntry>;

export interface UseEntry {
  id: string;
  act: UseAct;
  doneAt: string;
}

/** What an act says that can’t be so by itself, whatever is on record. */
export function actFaults(
  act: UseAct,
): ('lostAtNeeded' | 'lostAtTooMuch' | 'oneAHole' | 'lotOfOther' | 'racked' | 'delayOfNothing')[] {
  if (act.kind === 'delay')
    return act.minutes === null && act.reasonId === null && act.note === null ? ['delayOfNothing'] : [];
  if (act.kind !== 'piece') return [];
  const faults: ReturnType<typeof actFaults> = [];
  if (act.outcome === 'notFound' && act.lostAt === null) faults.push('lostAtNeeded');
  if (act.outcome !== 'notFound' && act.lostAt !== null) faults.push('lostAtTooMuch');
  if (act.place !== null && act.quantity > 1) faults.push('oneAHole');
  if (act.lot.kind === (act.source.kind === 'slot' ? 'asIssued' : 'setAndLoad')) faults.push('lotOfOther');
  if (act.outcome === 'returnedUnopened' && act.source.kind === 'slot') faults.push('racked');
  return faults;
}
