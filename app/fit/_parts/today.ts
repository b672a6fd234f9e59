import 'server-only';
import { now } from '@/app/_server/clock';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';

/** The calendar date where this program runs. */
export function today(): PlainDate {
  const moment = new Date(now());
  const two = (part: number) => String(part).padStart(2, '0');
  return plainDate.parse(`${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`);
}
