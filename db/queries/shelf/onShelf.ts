import { sql } from 'drizzle-orm';
import { stock } from '../../schema';

/**
 * Heaps that hold something. Those that are used up stay on file, and with the years are most of it: written out, and not with a value
 * bound to it, this is what the indexes of the others are found by.
 */
export const onShelf = sql`${stock.quantity} > 0`;
