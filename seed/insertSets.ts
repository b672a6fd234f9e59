import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { countLines, counts, setContents, setForeignPieces, sets } from '@/db/schema';
import { idOfCode } from './catalogue/entry';
import { CONFIGURATIONS } from './configurations/configurations';
import { type LineEntry, linesOf, versionIdOf } from './configurations/layout';
import type { DemoPerson } from './hospital/people';
import type { HospitalClock } from './hospitalClock';
import type { Found, SetPlan } from './sets/setPlan';
import { SETS } from './sets/sets';

/** A set being written: its plan, and the lines of its version. */
interface SetToWrite {
  plan: SetPlan;
  setId: string;
  versionId: string;
  lines: LineEntry[];
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
    await insertSet(write, { plan, setId: setIdOf(plan.code), versionId, lines }, clock);
  }
}

export const setIdOf = (code: string) => `set_${code.toLowerCase()}`;

async function insertSet(write: Queries, set: SetToWrite, clock: HospitalClock): Promise<void> {
  const { plan, setId, versionId, lines } = set;
  const [first, ...later] = [
    { by: plan.countedBy ?? ('person_wren-adeyemi' as const), short: plan.short ?? {} },
    ...(plan.secondCount ? [plan.secondCount] : []),
  ];
  await insertMany(write, sets, [
    {
      id: setId,
      code: plan.code,
      versionId,
      owner: plan.owner ?? 'ours',
      ownerNote: plan.ownerNote ?? null,
      step: plan.step,
      stepSince: clock.minutesFromNow(-plan.hoursInStep * 60),
      heldBecause: plan.heldBecause ?? null,
      readyAt: readyAtOf(plan, clock),
      useBy: plan.useByDays === undefined ? null : clock.date(plan.useByDays),
      placeId: plan.place,
      revision: plan.neverCounted ? 1 : 2,
    },
  ]);
  await insertMany(
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
  // what nobody has counted is not known to be there
  if (plan.neverCounted || !first) return;
  const found = foundIn(lines, first.short, plan.code);
  await insertMany(
    write,
    setContents,
    found.map(({ expected: _expected, ...line }) => ({ ...line, setId })),
  );
  await insertCount(write, set, { by: first.by, found, minutesBefore: 45, number: 1 }, clock);
  for (const [index, { by, short }] of later.entries()) {
    const again = foundIn(lines, short, plan.code);
    await insertCount(write, set, { by, found: again, minutesBefore: 15, number: index + 2 }, clock);
  }
}

interface LineFound {
  lineId: string;
  expected: number;
  found: number;
  unsound: number;
  condition: string;
}

/** Every line with what was found of it: all of it, sound, but for what is named as short. */
function foundIn(lines: LineEntry[], short: Record<string, Found>, setCode: string): LineFound[] {
  const byItem = new Map(Object.entries(short).map(([code, there]) => [idOfCode(code), there]));
  const missing = [...byItem.keys()].filter((id) => !lines.some((line) => line.itemId === id));
  if (missing.length > 0) throw new Error(`${setCode} has no line for ${missing.join(', ')}`);
  return lines.map((line) => {
    const there = byItem.get(line.itemId);
    return {
      lineId: line.id,
      expected: line.expected,
      found: there?.found ?? line.expected,
      unsound: there?.unsound ?? 0,
      condition: there?.condition ?? 'sound',
    };
  });
}

async function insertCount(
  write: Queries,
  { plan, setId, versionId }: SetToWrite,
  count: { by: DemoPerson; found: LineFound[]; minutesBefore: number; number: number },
  clock: HospitalClock,
): Promise<void> {
  const countId = `count_demo-${plan.code.toLowerCase()}-${count.number}`;
  await insertMany(write, counts, [
    {
      id: countId,
      setId,
      versionId,
      countedBy: count.by,
      countedAt: clock.minutesFromNow(-plan.hoursInStep * 60 - count.minutesBefore),
      baseRevision: 1,
    },
  ]);
  await insertMany(
    write,
    countLines,
    count.found.map((line) => ({ ...line, countId })),
  );
}

function readyAtOf(plan: SetPlan, clock: HospitalClock): string | null {
  if (plan.ready) return clock.at(...plan.ready);
  return plan.readyInMinutes === undefined ? null : clock.minutesFromNow(plan.readyInMinutes);
}

function versionInForce(code: string): number {
  const found = CONFIGURATIONS.find((each) => each.code === code)?.versions.find(
    (version) => version.status === 'inForce',
  );
  if (!found) throw new Error(`no version of ${code} is in force`);
  return found.version;
}
