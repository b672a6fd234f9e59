import { z } from 'zod';
import { theatreId } from '../identity/ids';

/** What a calendar feed is of. */
export const feedKind = z.enum(['theatre', 'sterileServices', 'loans']);
export type FeedKind = z.infer<typeof feedKind>;

/** What is asked for when an address is made. */
export const newFeed = z.strictObject({
  kind: feedKind,
  /** One theatre, or every one. */
  theatreId: theatreId.nullable(),
  name: z.string().trim().min(1, 'say what the address is for').max(60, 'at most 60 characters'),
});

/** How far a feed looks: what is over stays a while, so that a reader sees that it was cancelled or moved. */
export const FEED_DAYS = { back: 7, ahead: 60 } as const;

/** How often a reader should ask again. */
export const REFRESH_MINUTES = 15;

/** Reads closer together than this are noted as one: the last read is for people, and every note waits for the disk. */
const NOTED_AFTER_MS = 60_000;

/** Whether it is worth noting that a feed was read again. */
export function isWorthNotingRead(lastReadAt: string | null, now: string): boolean {
  return lastReadAt === null || Date.parse(now) - Date.parse(lastReadAt) >= NOTED_AFTER_MS;
}
