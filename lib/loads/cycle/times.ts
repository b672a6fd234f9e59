/** How a file writes its times; all rows in one way. */
export type TimeForm = 'seconds' | 'clock' | 'iso';

const SECONDS = /^\d{1,7}(?:[.,]0+)?$/;
const CLOCK = /^(\d{1,2}):([0-5]\d):([0-5]\d)(?:[.,]0+)?$/;
const ISO = /^(\d{4}-\d{2}-\d{2})[T ]([0-2]\d:[0-5]\d:[0-5]\d)(?:[.,]0+)?(Z|[+-]\d{2}:?\d{2})?$/;

const DAY = 86_400;

/** Whole seconds on a scale of the form's own, or `null` where it is not written so. */
export function readTime(cell: string, form: TimeForm): number | null {
  switch (form) {
    case 'seconds':
      return SECONDS.test(cell) ? Number.parseInt(cell, 10) : null;
    case 'clock': {
      const found = CLOCK.exec(cell);
      return found ? Number(found[1]) * 3600 + Number(found[2]) * 60 + Number(found[3]) : null;
    }
    case 'iso': {
      const found = ISO.exec(cell);
      if (!found) return null;
      const ms = Date.parse(`${found[1]}T${found[2]}${zoneOf(found[3])}`);
      return Number.isNaN(ms) ? null : ms / 1000;
    }
  }
}

const zoneOf = (zone: string | undefined) =>
  zone === undefined || zone === 'Z'
    ? 'Z'
    : zone.includes(':')
      ? zone
      : `${zone.slice(0, 3)}:${zone.slice(3)}`;

/** The form the first time is written in. */
export function timeFormOf(cell: string): TimeForm | null {
  return (['seconds', 'clock', 'iso'] as const).find((form) => readTime(cell, form) !== null) ?? null;
}

/** Whether a time of day went on past midnight: it falls by more than half a day, which no log does otherwise. */
export const passedMidnight = (form: TimeForm, before: number, after: number): boolean =>
  form === 'clock' && before - after > DAY / 2;

export const ONE_DAY_SECONDS = DAY;
