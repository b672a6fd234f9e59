import { z } from 'zod';
import { caseId, setId, theatreId } from '../../identity/ids';

/** Where a day of the theatre list is looked at. */
export const dayView = z.enum(['morning', 'dayBefore', 'theatreList']);
export type DayView = z.infer<typeof dayView>;

const set = z.strictObject({ id: setId, code: z.string().min(1).max(60) });

/** How a case stood, as far as a change of it is worth telling. */
const seenStanding = z.strictObject({
  kind: z.enum(['notPlanned', 'shortOf', 'ready', 'readyWith', 'waiting', 'noSetFree']),
  /** While it waited, when the last of its sets could be had; `null` once that was over, and for whatever else. */
  until: z.iso.datetime().nullable(),
  sets: z.array(set).max(60),
});

/** A case as somebody saw it on a day's list. No more of it than its reference, where and when it is, and what it gets. */
export const seenCase = z.strictObject({
  id: caseId,
  reference: z.string().min(1).max(60),
  theatreId,
  theatre: z.string().min(1).max(200),
  startsAt: z.iso.datetime(),
  endsAt: z.iso.datetime(),
  cancelled: z.boolean(),
  /** The version that counts; `null` while there is none. */
  planVersion: z.number().int().positive().nullable(),
  confirmed: z.boolean(),
  promised: z.array(set).max(60),
  /** `null`: it was over, begun, or beyond what is planned ahead. */
  standing: seenStanding.nullable(),
});
export type SeenCase = z.infer<typeof seenCase>;
export type SeenStanding = z.infer<typeof seenStanding>;

/** A day has no more cases than this. */
export const seenDay = z.array(seenCase).max(400);

/** When somebody last marked a day as seen, and how it stood then. */
export interface DayLook {
  view: DayView;
  shownAt: string;
  /** The ledger's newest entry when it was shown: what came after it is news. */
  ledgerSeq: number;
  seen: SeenCase[];
}
