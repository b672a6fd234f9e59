import type { PlainDate } from '../../quantities/plainDate';

/** Which of the two it is, where the clocks go back and an hour comes twice. */
export type RepeatedHour = 'first' | 'second';

const HOUR_MS = 3_600_000;

/** Turns wall time of one zone into instants. */
export interface WallTimes {
  /** Every instant, in order, when calendar and clock show this: none in a skipped hour, two in a repeated one. */
  instantsOf(date: PlainDate, minute: number): string[];
}

/** Wall times of a zone of the IANA time zone database. One formatter serves all rows: making one is slow. */
export function wallTimes(zone: string): WallTimes {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });
  /** What the wall shows at an instant, as if it were UTC. */
  const shownMs = (ms: number): number => {
    const parts = new Map(format.formatToParts(ms).map(({ type, value }) => [type, Number(value)]));
    const part = (type: Intl.DateTimeFormatPartTypes) => parts.get(type) ?? Number.NaN;
    return Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'));
  };
  return {
    instantsOf(date, minute) {
      const wanted = Date.parse(`${date}T00:00:00Z`) + minute * 60_000;
      // an offset changes by two hours at the most, and not twice within two days
      const offsets = [-24, 24].map((hours) => {
        const at = wanted + hours * HOUR_MS;
        return shownMs(at) - at;
      });
      return [...new Set(offsets)]
        .map((offset) => wanted - offset)
        .filter((at) => shownMs(at) === wanted)
        .sort((a, b) => a - b)
        .map((at) => new Date(at).toISOString());
    },
  };
}
