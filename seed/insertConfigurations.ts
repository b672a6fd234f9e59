import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { insertConfigurationVersion } from '@/db/operations/insert-configuration-version';
import { configurations } from '@/db/schema';
import { configurationLine, draftVersion, frozenVersion } from '@/lib/sets/configuration';
import { idOfCode } from './catalogue/entry';
import { CONFIGURATIONS } from './configurations/configurations';
import {
  type ConfigurationPlan,
  configurationIdOf,
  linesOf,
  type VersionPlan,
  versionIdOf,
} from './configurations/layout';
import type { HospitalClock } from './hospitalClock';

/** Configurations with all their versions. */
export async function insertConfigurations(write: Queries, clock: HospitalClock): Promise<void> {
  await insertMany(
    write,
    configurations,
    CONFIGURATIONS.map(({ code, name }) => ({ id: configurationIdOf(code), code, name })),
  );
  for (const configuration of CONFIGURATIONS) {
    for (const version of [...configuration.versions].sort((a, b) => a.version - b.version)) {
      await insertVersion(write, configuration, version, clock);
    }
  }
}

async function insertVersion(
  write: Queries,
  { code }: ConfigurationPlan,
  plan: VersionPlan,
  clock: HospitalClock,
) {
  const body = {
    id: versionIdOf(code, plan.version),
    configurationId: configurationIdOf(code),
    version: plan.version,
    layers: plan.layers.map(({ name }, index) => ({ layer: index + 1, name })),
    promises: plan.promises,
    basketItemId: plan.basket && idOfCode(plan.basket),
    containerItemId: plan.container && idOfCode(plan.container),
  };
  const lines = linesOf(code, plan);
  (plan.status === 'draft' ? draftVersion : frozenVersion).parse({ ...body, lines, status: plan.status });
  const frozen = plan.status !== 'draft';
  await insertConfigurationVersion(write, {
    version: {
      ...body,
      status: plan.status,
      note: plan.note,
      draftedBy: 'person_maurice-oduya',
      approvedBy: frozen ? 'person_hettie-crane' : null,
      inForceFrom: plan.inForceDaysAgo === null ? null : clock.date(-plan.inForceDaysAgo),
      revision: 1,
    },
    lines: lines.map((line) => configurationLine.parse(line)),
  });
}
