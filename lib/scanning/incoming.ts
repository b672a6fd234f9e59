import { z } from 'zod';
import { scanId } from '../identity/ids';
import { type ScanMeaning, scanContext, scanHow } from './meaning';

/** One scan as a browser sends it. */
export const incomingScan = z.strictObject({
  /** Made where it was scanned: the same scan sent again is known by it. */
  id: scanId,
  text: z.string().min(1).max(1000),
  how: scanHow,
  /** By the clock of that browser. */
  doneAt: z.iso.datetime(),
  context: scanContext,
  /** `sent` only where the scanner was seen to pass separators on. */
  separators: z.enum(['mayBeLost', 'sent']),
  /** Of the session at the moment of the scan, so that a scan sent late keeps its person. */
  session: z.strictObject({ id: z.string().max(80), ticket: z.string().max(200) }).nullable(),
});
export type IncomingScan = z.infer<typeof incomingScan>;

/** More are sent in several requests. */
export const MOST_AT_ONCE = 20;

export const incomingScans = z.strictObject({ scans: z.array(incomingScan).min(1).max(MOST_AT_ONCE) });

/** What tells one thing from another where the same one must not count twice. */
export interface CountedThing {
  key: string;
  /** There is only one such thing: twice is the same again. Of others there may be another. */
  single: boolean;
}

/** `null`: nothing that is counted. */
export function countedThing(meaning: ScanMeaning): CountedThing | null {
  switch (meaning.kind) {
    case 'set':
      return { key: meaning.setId, single: true };
    case 'pack':
      return { key: meaning.packId, single: true };
    case 'item':
      return meaning.serial === null
        ? { key: `${meaning.itemId} lot ${meaning.lot ?? ''}`, single: false }
        : { key: `${meaning.itemId} serial ${meaning.serial}`, single: true };
    case 'stock':
      return { key: meaning.stockId, single: false };
    default:
      return null;
  }
}
