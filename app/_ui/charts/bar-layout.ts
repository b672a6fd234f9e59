import { scaleBand, scaleLinear } from 'd3-scale';

/** The ground a chart is drawn on, in the units of its view box. */
export interface ChartBox {
  width: number;
  height: number;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** One place along the chart with a value for each series; `null`: not known, and nothing is drawn. */
export interface BarRow {
  label: string;
  values: readonly (number | null)[];
}

export interface BarPiece {
  series: number;
  x: number;
  y: number;
  width: number;
  height: number;
}

export interface BarsDrawn {
  columns: { label: string; x: number; pieces: BarPiece[]; named: boolean }[];
  ticks: { at: number; value: number }[];
  floor: number;
}

/** Upright bars, the series of each stacked from the floor up. Labels are thinned so that none touches the next. */
export function stackedColumns(rows: readonly BarRow[], box: ChartBox, labelWidth: number): BarsDrawn {
  const floor = box.height - box.bottom;
  const across = scaleBand<number>()
    .domain(rows.map((_, at) => at))
    .range([box.left, box.width - box.right])
    .paddingInner(0.3)
    .paddingOuter(0.15);
  const up = scaleLinear()
    .domain([0, highest(rows)])
    .nice(4)
    .range([floor, box.top]);
  const every = Math.max(1, Math.ceil(labelWidth / Math.max(1, across.step())));
  return {
    floor,
    ticks: up.ticks(4).map((value) => ({ at: tenth(up(value)), value })),
    columns: rows.map(({ label, values }, at) => {
      const x = across(at) ?? 0;
      let below = 0;
      const pieces = values.flatMap((value, series): BarPiece[] => {
        if (value === null || value <= 0) return [];
        const [bottom, top] = [up(below), up(below + value)];
        below += value;
        return [
          {
            series,
            x: tenth(x),
            y: tenth(top),
            width: tenth(across.bandwidth()),
            height: tenth(bottom - top),
          },
        ];
      });
      return {
        label,
        x: tenth(x + across.bandwidth() / 2),
        pieces,
        named: (rows.length - 1 - at) % every === 0,
      };
    }),
  };
}

/** Lying bars from one edge, for things with long names: the length of each as a share of the longest, 0 to 1. */
export function barShares(values: readonly (number | null)[]): (number | null)[] {
  const most = values.reduce<number>((best, value) => Math.max(best, value ?? 0), 0);
  return values.map((value) => (value === null ? null : most === 0 ? 0 : value / most));
}

const highest = (rows: readonly BarRow[]) =>
  Math.max(
    1e-9,
    ...rows.map(({ values }) => values.reduce<number>((sum, value) => sum + Math.max(0, value ?? 0), 0)),
  );

const tenth = (value: number) => Math.round(value * 10) / 10;
