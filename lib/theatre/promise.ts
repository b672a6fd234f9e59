/** From when until when a set is spoken for, as ISO instants in UTC; the end itself is free again. */
export interface PromiseTimes {
  fromAt: string;
  untilAt: string;
}

/**
 * From when until when a case needs its sets: from when they must stand in theatre until they can be back in the sterile
 * store.
 *
 * @param leadMinutes  how long before the case begins its sets stand in theatre
 * @param roundMinutes how long a set takes from the end of a case to the sterile store
 */
export function promiseTimes(
  { startsAt, endsAt }: { startsAt: string; endsAt: string },
  leadMinutes: number,
  roundMinutes: number,
): PromiseTimes {
  return { fromAt: later(startsAt, -leadMinutes), untilAt: later(endsAt, roundMinutes) };
}

// written anew even where nothing is added: instants are compared as text
const later = (at: string, minutes: number) => new Date(Date.parse(at) + minutes * 60_000).toISOString();
