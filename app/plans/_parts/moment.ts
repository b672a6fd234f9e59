import { dayWords, wallClock } from '@/lib/theatre/localTime';

/** `Wednesday 14 January 2026 at 06:30`, for when a version was saved: it may be years ago. */
export function savedWords(instant: string): string {
  const { date, time } = wallClock(instant);
  return `${dayWords(date)} ${date.slice(0, 4)} at ${time}`;
}
