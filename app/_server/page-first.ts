import 'server-only';
import { setTimeout as wait } from 'node:timers/promises';

/** Enough for what is ready of a page to be written out. */
const MS = 30;

/**
 * What is worked out for a part of a page begins after the page itself is on its way. The store answers at once and not by and
 * by, so without this the head of the page, ready long before, would be sent only when the last part is worked out.
 */
export const pageFirst = (): Promise<void> => wait(MS);
