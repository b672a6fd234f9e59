import type { Queries } from '@/db/client';
import { insertConfigurationVersion } from '@/db/operations/insert-configuration-version';
import { configurations, countLines, counts, setContents, setForeignPieces, sets } from '@/db/schema';
import { configurationLine, draftVersion, frozenVersion } from '@/lib/sets/configuration';
import { idOfCode } from './catalogue/entry';
import { CONFIGURATIONS } from './configurations/configurations';
import {
  type ConfigurationPlan,
  configurationIdOf,
  type LineEntry,
  linesOf,
  type VersionPlan,
  versionIdOf,
} from './configurations/layout';
import type { HospitalClock } from './hospitalClock';
import { insertAll } from './insertAll';
import type { SetPlan } from './sets/setPlan';
import { SETS } from './sets/sets';

/** Configurations with all their versions. */
export async function insertConfigurations(write: Queries, clock: HospitalClock): Promise<void> {
  await insertAll(
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

/** Sets with what each holds now, pieces that belong elsewhere, and the count that found it so. */
export async function insertSets(write: Queries, clock: HospitalClock): Promise<void> {
  const linesByVersion = new Map(
    CONFIGURATIONS.flatMap((configuration) =>
      configuration.versions.map(
        (version) =>
          [versionIdOf(configuration.code, version.version), linesOf(configuration.code, version)] as const,
      ),
    ),
  );
  for (const plan of SETS) {
    const versionId = versionIdOf(plan.configuration, plan.version ?? versionInForce(plan.configuration));
    const lines = linesByVersion.get(versionId);
    if (!lines) throw new Error(`${plan.code} is of a version that is not there: ${versionId}`);
    await insertSet(write, plan, versionId, lines, clock);
  }
}

export const setIdOf = (code: string) => `set_${code.toLowerCase()}`;

async function insertSet(
  write: Queries,
  plan: SetPlan,
  versionId: string,
  lines: LineEntry[],
  clock: HospitalClock,
) {
  const setId = setIdOf(plan.code);
  await insertAll(write, sets, [
    {
      id: setId,
      code: plan.code,
      versionId,
      owner: plan.owner ?? 'ours',
      ownerNote: plan.ownerNote ?? null,
      step: plan.step,
      stepSince: clock.minutesFromNow(-plan.hoursInStep * 60),
      heldBecause: plan.heldBecause ?? null,
      readyAt: plan.ready
        ? clock.at(...plan.ready)
        : plan.readyInMinutes
          ? clock.minutesFromNow(plan.readyInMinutes)
          : null,
      useBy: plan.useByDays === undefined ? null : clock.date(plan.useByDays),
      placeId: plan.place,
      revision: plan.neverCounted ? 1 : 2,
    },
  ]);
  const unknown = new Set(Object.keys(plan.short ?? {}).map(idOfCode));
  const contents = lines.map((line) => {
    const [, there] = Object.entries(plan.short ?? {}).find(([code]) => idOfCode(code) === line.itemId) ?? [];
    unknown.delete(line.itemId);
    return {
      setId,
      lineId: line.id,
      found: there?.found ?? line.expected,
      unsound: there?.unsound ?? 0,
      condition: there?.condition ?? 'sound',
    };
  });
  if (unknown.size > 0) throw new Error(`${plan.code} has no line for ${[...unknown].join(', ')}`);
  await insertAll(write, setContents, contents);
  await insertAll(
    write,
    setForeignPieces,
    (plan.foreign ?? []).map(({ code, quantity, note }, index) => ({
      id: `foreign_${plan.code.toLowerCase()}-${index + 1}`,
      setId,
      itemId: idOfCode(code),
      quantity,
      note,
    })),
  );
  if (plan.neverCounted) return;
  const countId = `count_demo-${plan.code.toLowerCase()}`;
  await insertAll(write, counts, [
    {
      id: countId,
      setId,
      versionId,
      countedBy: plan.countedBy ?? 'person_wren-adeyemi',
      countedAt: clock.minutesFromNow(-plan.hoursInStep * 60 - 45),
      baseRevision: 1,
    },
  ]);
  const expectedOf = new Map(lines.map((line) => [line.id, line.expected]));
  await insertAll(
    write,
    countLines,
    contents.map(({ setId: _set, ...line }) => ({
      ...line,
      countId,
      expected: expectedOf.get(line.lineId) ?? 0,
    })),
  );
}

function versionInForce(code: string): number {
  const found = CONFIGURATIONS.find((each) => each.code === code)?.versions.find(
    (version) => version.status === 'inForce',
  );
  if (!found) throw new Error(`no version of ${code} is in force`);
  return found.version;
}
