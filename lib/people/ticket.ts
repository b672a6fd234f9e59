import type { SessionTimes } from './session';

/** Clocks of workstations are not the server's. */
const CLOCKS_DIFFER_MS = 5 * 60_000;
/** An entry that waited for a network is taken for so long after its session was over: one shift. */
const TAKEN_FOR_MS = 12 * 3_600_000;

/**
 * Whether an entry that carries a session's ticket was made in that session, and comes soon enough to be taken. Who is
 * at the screen by now plays no part: the entry is the ticket's person's. Being idle plays none either, since a browser
 * without a network is not heard of while its person works.
 */
export function entryInSession(
  { beganAt, endsAt, endedAt }: SessionTimes,
  doneAt: string,
  now: string,
): 'good' | 'outside' | 'tooLate' {
  const [began, over, done] = [beganAt, endedAt ?? endsAt, doneAt].map((at) => Date.parse(at)) as [
    number,
    number,
    number,
  ];
  if (!(done >= began - CLOCKS_DIFFER_MS && done <= over + CLOCKS_DIFFER_MS)) return 'outside';
  return Date.parse(now) > over + TAKEN_FOR_MS ? 'tooLate' : 'good';
}
