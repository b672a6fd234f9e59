import 'server-only';
import { setTimeout as turnOfTheLoop } from 'node:timers/promises';

/** As often the loop goes round before; what is ready of a page is written out in fewer, however busy the machine. */
const TURNS = 12;

/**
 * What is worked out for a part of a page begins after the page itself is on its way. The store answers at once and not by and
 * by, so without this the head of the page, ready long before, would be sent only when the last part is worked out.
 */
export async function pageFirst(): Promise<void> {
  for (let turn = 0; turn < TURNS; turn += 1) await turnOfTheLoop(1);
}
