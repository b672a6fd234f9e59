import type { Construct } from './plan';

/** A named spread of screw lengths with the publication it is from. Nothing here is estimated by us. */
export interface DefaultSpread {
  id: string;
  name: string;
  regions: readonly Construct['region'][];
  meanMm: number;
  sdMm: number;
  /** Shortest and longest seen in the source. */
  rangeMm: readonly [number, number];
  source: string;
}

/** Only regions with a published figure have a default; for all others the surgeon states the figures. */
export const DEFAULT_SPREADS: readonly DefaultSpread[] = [
  {
    id: 'distal-radius-2015',
    name: 'Distal radius, all screws',
    regions: ['distalRadius'],
    meanMm: 21.7,
    sdMm: 2.6,
    rangeMm: [16, 26],
    source: 'J Orthop Surg Res 2015, doi 10.1186/s13018-015-0283-8',
  },
];

/** The named spreads for a region; empty where nothing is published. */
export function defaultSpreadsFor(region: Construct['region']): DefaultSpread[] {
  return DEFAULT_SPREADS.filter(({ regions }) => regions.includes(region));
}
