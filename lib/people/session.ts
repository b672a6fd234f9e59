/** When a session began, was last heard of, must end, and was ended, as ISO instants. */
export interface SessionTimes {
  beganAt: string;
  seenAt: string;
  endsAt: string;
  endedAt: string | null;
}

/** The moment a session is over: ended by hand, at its absolute limit, or after nothing was heard for so long. */
export function endOfSession(times: SessionTimes, idleMinutes: number): string {
  if (times.endedAt !== null) return times.endedAt;
  const idle = Date.parse(times.seenAt) + idleMinutes * 60_000;
  return new Date(Math.min(idle, Date.parse(times.endsAt))).toISOString();
}

export function isAlive(times: SessionTimes, now: string, idleMinutes: number): boolean {
  return times.endedAt === null && now < endOfSession(times, idleMinutes);
}

/** A session heard of within this is not written again: a page of ten requests is one write. */
const HEARD_EVERY_MS = 60_000;

export function isWorthNoting(times: SessionTimes, now: string): boolean {
  return Date.parse(now) - Date.parse(times.seenAt) >= HEARD_EVERY_MS;
}
