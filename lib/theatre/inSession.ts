/** When a theatre works, as ISO instants in UTC; the end itself is outside. */
export interface SessionSpan {
  startsAt: string;
  endsAt: string;
}

/** Whether a case lies within one of the theatre's sessions as a whole; one that runs over is not. */
export function isInSession(
  { startsAt, endsAt }: SessionSpan,
  sessions: readonly SessionSpan[],
): 'inside' | 'runsOver' | 'outside' {
  const ms = Date.parse;
  const begun = sessions.filter((one) => ms(one.startsAt) <= ms(startsAt) && ms(startsAt) < ms(one.endsAt));
  if (begun.length === 0) return 'outside';
  return begun.some((one) => ms(endsAt) <= ms(one.endsAt)) ? 'inside' : 'runsOver';
}
