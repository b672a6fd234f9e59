import 'server-only';
import { now } from '@/app/_server/clock';
import { bookingChoices } from '@/db/queries/cases';
import type { Reading } from '@/db/reader';
import { addDays } from '@/lib/quantities/plainDate';
import { type SampleRow, sampleRows } from '@/lib/theatre/import/sample';
import { wallClock } from '@/lib/theatre/localTime';

const DAYS_AHEAD = 14;

/** A list to begin from, with the names of this hospital, two weeks ahead. */
export async function hospitalSample(db: Reading): Promise<SampleRow[]> {
  const { theatres, surgeons } = await bookingChoices(db);
  return sampleRows(
    theatres.map(({ name }) => name),
    surgeons.map(({ name }) => name),
    addDays(wallClock(now()).date, DAYS_AHEAD),
  );
}
