import type { HoldingBand } from '../../calculations/thermalDose/schema';
import type { CycleReading } from './readCycle';

export interface ChartBox {
  width: number;
  height: number;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** A drawing of temperature over time in the units of its box. */
export interface CycleChart {
  /** One for each stretch without a gap: nothing is drawn where nothing was logged. */
  lines: string[];
  band: { y: number; height: number } | null;
  /** Where the longest stretch within the band lies. */
  plateau: { x: number; width: number } | null;
  xTicks: { x: number; label: string }[];
  yTicks: { y: number; label: string }[];
}

const MINUTE_STEPS = [1, 2, 5, 10, 15, 30, 60, 120];
const MOST_X_TICKS = 9;
const CELSIUS_STEP = 20;

interface ChartOf {
  readings: readonly CycleReading[];
  longestGapSeconds: number;
  band: HoldingBand | null;
  plateau: { fromSecond: number | null; toSecond: number | null } | null;
  box: ChartBox;
}

export function cycleChart({ readings, longestGapSeconds, band, plateau, box }: ChartOf): CycleChart {
  const [first, last] = [readings[0], readings.at(-1)];
  if (first === undefined || last === undefined || last.second <= first.second)
    return { lines: [], band: null, plateau: null, xTicks: [], yTicks: [] };
  const hottest = readings.reduce(
    (most, { millicelsius }) => Math.max(most, millicelsius / 1000),
    band?.highC ?? band?.lowC ?? 0,
  );
  const coolest = readings.reduce((least, { millicelsius }) => Math.min(least, millicelsius / 1000), 0);
  const top = Math.ceil((hottest + 2) / CELSIUS_STEP) * CELSIUS_STEP;
  const bottom = Math.floor(coolest / CELSIUS_STEP) * CELSIUS_STEP;
  const span = last.second - first.second;
  const x = (second: number) =>
    tenth(box.left + ((second - first.second) / span) * (box.width - box.left - box.right));
  const y = (celsius: number) =>
    tenth(box.top + ((top - celsius) / (top - bottom)) * (box.height - box.top - box.bottom));
  const step = MINUTE_STEPS.find((minutes) => span / 60 / minutes <= MOST_X_TICKS) ?? 240;
  const from = plateau?.fromSecond ?? null;
  const to = plateau?.toSecond ?? null;
  return {
    lines: stretches(readings, longestGapSeconds).map((stretch) =>
      thinned(stretch, x)
        .map(
          ({ second, millicelsius }, at) => `${at === 0 ? 'M' : 'L'}${x(second)} ${y(millicelsius / 1000)}`,
        )
        .join(''),
    ),
    band:
      band === null ? null : { y: y(band.highC ?? top), height: tenth(y(band.lowC) - y(band.highC ?? top)) },
    plateau: from === null || to === null ? null : { x: x(from), width: tenth(x(to) - x(from)) },
    xTicks: Array.from({ length: Math.floor(span / 60 / step) + 1 }, (_, at) => ({
      x: x(first.second + at * step * 60),
      label: String(at * step),
    })),
    yTicks: Array.from(
      { length: (top - bottom) / CELSIUS_STEP + 1 },
      (_, at) => bottom + at * CELSIUS_STEP,
    ).map((celsius) => ({
      y: y(celsius),
      label: String(celsius),
    })),
  };
}

const tenth = (value: number) => Math.round(value * 10) / 10;

function stretches(readings: readonly CycleReading[], longestGapSeconds: number): CycleReading[][] {
  const all: CycleReading[][] = [];
  for (const reading of readings) {
    const open = all.at(-1);
    const before = open?.at(-1);
    if (open && before && reading.second - before.second <= longestGapSeconds) open.push(reading);
    else all.push([reading]);
  }
  return all;
}

/** At most the coolest and the hottest of each point of paper, so that no peak is lost and a long log stays small. */
function thinned(stretch: readonly CycleReading[], x: (second: number) => number): CycleReading[] {
  const kept: CycleReading[] = [];
  let at = 0;
  while (at < stretch.length) {
    const place = Math.floor(x(stretch[at]?.second ?? 0));
    let end = at;
    while (end < stretch.length && Math.floor(x(stretch[end]?.second ?? 0)) === place) end += 1;
    const here = stretch.slice(at, end);
    const low = here.reduce((a, b) => (b.millicelsius < a.millicelsius ? b : a));
    const high = here.reduce((a, b) => (b.millicelsius > a.millicelsius ? b : a));
    kept.push(...(low === high ? [low] : low.second < high.second ? [low, high] : [high, low]));
    at = end;
  }
  return kept;
}
