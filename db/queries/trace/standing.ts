import { type SQL, sql } from 'drizzle-orm';

/**
 * Leaves out moves that a corrected record of use took back, and the pieces it put back into their slot by that: together
 * they are nothing that happened. What was counted in between stands.
 */
export const STANDS: SQL = sql`AND seq NOT IN (SELECT move_seq FROM moves_taken_back)
  AND NOT (act = 'found' AND reason IS 'correction')`;

/** The same of what left a slot, which was never put back into it. */
export const STANDS_AS_LEFT: SQL = sql`AND seq NOT IN (SELECT move_seq FROM moves_taken_back)`;
