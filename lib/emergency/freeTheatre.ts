/** A case that holds a theatre, as ISO instants. */
export interface TheatreUse {
  startsAt: string;
  endsAt: string;
}

/** The first instant from `fromAt` on at which a theatre is free for so long; what ends makes room for what begins. */
export function freeFrom(uses: readonly TheatreUse[], fromAt: string, minutes: number): string {
  let at = Date.parse(fromAt);
  const inTurn = [...uses].sort((a, b) => Date.parse(a.startsAt) - Date.parse(b.startsAt));
  for (const { startsAt, endsAt } of inTurn)
    if (Date.parse(startsAt) < at + minutes * 60_000 && Date.parse(endsAt) > at) at = Date.parse(endsAt);
  return new Date(at).toISOString();
}
