import type { Construct } from '@/lib/plans/plan';
import { CASES } from '../cases/cases';
import { CONFIGURATIONS } from '../configurations/configurations';
import { type LineEntry, linesOf, versionIdOf } from '../configurations/layout';

/** What a set of one version was used for, and how often sets of its kind are. */
export interface Work {
  versionId: string;
  lines: LineEntry[];
  constructs: Construct[];
}

/** Cases a year for which sets of a configuration are opened; those not named bring none of their own. */
export const CASES_A_YEAR: Readonly<Record<string, number>> = {
  SFS: 80,
  SFL: 90,
  SFT: 40,
  DRT: 65,
  DTT: 24,
  PHT: 26,
  DFB: 36,
  CLO: 30,
  MFS: 24,
  M27: 12,
  MFT: 7,
  LFS: 22,
  LFL: 20,
  PTT: 14,
  DFF: 9,
};

/** By version: constructs that can be built from it, plates in single packs beside it where it holds none. */
export function workOfVersions(): ReadonlyMap<string, Work> {
  const planned = CASES.flatMap(({ plans }) =>
    plans.filter(({ status }) => status === 'confirmed').map(({ construct }) => construct),
  );
  const work = new Map<string, Work>();
  for (const configuration of CONFIGURATIONS) {
    const promised = configuration.versions.flatMap(({ promises }) =>
      promises.map(({ construct }) => construct),
    );
    for (const version of configuration.versions) {
      const lines = linesOf(configuration.code, version);
      const held = new Set(lines.map(({ itemId }) => itemId));
      const all = [...planned, ...promised].filter(({ plates }) => plates.length > 0);
      const whole = all.filter(({ plates }) => plates.every(({ plateItemId }) => held.has(plateItemId)));
      const versionId = versionIdOf(configuration.code, version.version);
      const constructs = whole.length > 0 ? whole : beside(all, configuration.code);
      work.set(versionId, { versionId, lines, constructs });
    }
  }
  return work;
}

/** Regions of the two sets whose plates come in single packs. */
const BESIDE: Readonly<Record<string, Construct['region']>> = { PTT: 'proximalTibia', DFF: 'distalFemur' };

const beside = (all: readonly Construct[], code: string) =>
  all.filter(({ region }) => region === BESIDE[code]);
