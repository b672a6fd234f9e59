import { sql } from 'drizzle-orm';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../client';

/** What day it is at the hospital by the database's own clock, whatever zone the machine is set to. */
export async function hospitalToday(read: Queries): Promise<PlainDate> {
  const [row] = await read.all<{ now: string }>(sql`SELECT strftime('%Y-%m-%dT%H:%M:%fZ', 'now') AS now`);
  if (!row) throw new Error('the database did not answer what time it is');
  return wallClock(row.now).date;
}
