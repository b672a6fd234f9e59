import { asc, eq, gt } from 'drizzle-orm';
import { turnStep } from '@/lib/sets/setState';
import {
  AFTER_STAGE,
  MOST_TURNS,
  STAGES,
  type Stage,
  type StageTime,
  stageTime,
} from '@/lib/turns/stageTimes';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { configurationVersions, sets, turnSteps } from '../../schema';
import { readSetting } from '../settings';

/** Steps looked at so far: they are append-only, so only newer ones are ever read again. */
interface Looked {
  seq: number;
  /** The step each set is in as of then. */
  open: Map<string, { turnId: string; step: string; at: string }>;
  /** Minutes past turns took, by kind of set and stage, the latest last. */
  minutes: Map<string, number[]>;
}
const kept = new WeakMap<Queries, Looked>();

/** How long each stage takes for each kind of set: from its own past turns, or the hospital's usual time. */
export async function loadStageTimes(
  db: Reading,
): Promise<(configurationId: string, stage: Stage) => StageTime> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const looked = kept.get(read) ?? { seq: 0, open: new Map(), minutes: new Map() };
  kept.set(read, looked);
  const [kinds, steps, settings] = await Promise.all([
    read
      .select({ setId: sets.id, configurationId: configurationVersions.configurationId })
      .from(sets)
      .innerJoin(configurationVersions, eq(configurationVersions.id, sets.versionId)),
    read
      .select({
        seq: turnSteps.seq,
        setId: turnSteps.setId,
        turnId: turnSteps.turnId,
        step: turnSteps.step,
        at: turnSteps.doneAt,
      })
      .from(turnSteps)
      .where(gt(turnSteps.seq, looked.seq))
      .orderBy(asc(turnSteps.seq)),
    readSetting(read, 'stages'),
  ]);
  const kindOf = new Map(kinds.map((row) => [row.setId, row.configurationId]));
  for (const one of steps) take(looked, one, kindOf.get(one.setId) ?? '');
  const usual: Record<Stage, number> = {
    comingBack: settings.comingBackMinutes,
    washing: settings.washingMinutes,
    onBench: settings.benchMinutes,
    packed: settings.packedMinutes,
    inSteriliser: settings.steriliserMinutes,
    awaitingAcceptance: settings.acceptanceMinutes,
  };
  return (configurationId, stage) =>
    stageTime(stage, looked.minutes.get(`${configurationId} ${stage}`) ?? [], {
      minutes: usual[stage],
      longShare: settings.longPercent / 100,
    });
}

function take(
  looked: Looked,
  one: { seq: number; setId: string; turnId: string; step: string; at: string },
  configurationId: string,
): void {
  const before = looked.open.get(one.setId);
  looked.open.set(one.setId, { turnId: one.turnId, step: one.step, at: one.at });
  looked.seq = Math.max(looked.seq, one.seq);
  const stage = STAGES.find((name) => name === before?.step);
  if (!before || !stage || before.turnId !== one.turnId) return;
  if (AFTER_STAGE[stage] !== turnStep.parse(one.step)) return;
  const key = `${configurationId} ${stage}`;
  const minutes = Math.round((Date.parse(one.at) - Date.parse(before.at)) / 60_000);
  looked.minutes.set(key, [...(looked.minutes.get(key) ?? []), minutes].slice(-MOST_TURNS));
}
