import { dateOf } from '../calculations/identifier/dates';
import type { PlainDate } from '../quantities/plainDate';

/**
 * A use-by as it is read off a pack and typed: `2028-03-31`, or `2028-03`, which is good through the last day of its month
 * (as GS1 dates have it where only the month is stated). `null`: no such date.
 */
export function typedUseBy(text: string): PlainDate | null {
  const parts = /^(\d{4})-(\d{1,2})(?:-(\d{1,2}))?$/.exec(text.trim());
  if (!parts) return null;
  const [, year, month, day] = parts;
  if (day !== undefined && Number(day) === 0) return null;
  const read = dateOf(Number(year), Number(month), Number(day ?? 0), day === undefined);
  return read.ok ? read.date : null;
}
