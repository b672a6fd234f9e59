import type { Queries } from '@/db/client';
import { sets } from '@/db/schema';
import type { HospitalClock } from '../hospitalClock';
import { setIdOf } from '../insertSets';
import { SETS } from '../sets/sets';
import { historyOf } from '../turns/history';
import { Chance } from './chance';
import { openedBeside } from './openedBeside';
import { type PastCase, pastCases, type UsedSet } from './pastCases';
import { type PastTurn, pastTurns } from './pastTurns';
import { type Work, workOfVersions } from './templates';

const SEED = 952_003;

/** Two years behind the demo, told once and written in parts. The same day always tells the same story. */
export interface History {
  sets: UsedSet[];
  work: ReadonlyMap<string, Work>;
  cases: PastCase[];
  turns: PastTurn[];
  /** By set: how many turns came before those the demo tells by itself. */
  turnsBefore: ReadonlyMap<string, number>;
  chance: Chance;
}

/** Needs the sets. */
export async function tellHistory(write: Queries, clock: HospitalClock): Promise<History> {
  const chance = new Chance(SEED);
  const now = clock.now.getTime();
  const work = workOfVersions();
  const versionOf = new Map((await write.select().from(sets)).map((row) => [row.id, row.versionId]));
  const used = SETS.flatMap((plan, index): UsedSet[] => {
    const setId = setIdOf(plan.code);
    const versionId = versionOf.get(setId);
    if (plan.owner === 'loan' || !versionId) return [];
    const { configuration, code } = plan;
    const twins = SETS.filter((one) => one.configuration === configuration && one.owner !== 'loan').length;
    return [{ setId, code, configuration, versionId, told: historyOf(plan, index, now).turns, twins }];
  });
  const cases = openedBeside(pastCases(used, work, chance, now), used, now);
  const turns = pastTurns(cases, chance);
  const turnsBefore = new Map<string, number>();
  for (const { set, number } of turns) turnsBefore.set(set.setId, number);
  return { sets: used, work, cases, turns, turnsBefore, chance };
}
