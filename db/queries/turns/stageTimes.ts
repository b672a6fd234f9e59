import { asc, gt } from 'drizzle-orm';
import { type StageSpread, stageSpread } from '@/lib/turns/stageSpread';
import { MOST_TURNS, type Stage, type StageTime, stageTime } from '@/lib/turns/stageTimes';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { stageEnds } from '../../schema';
import { readSetting } from '../settings';

/** Stages looked at so far: what ended one is append-only, so only newer ones are ever read again. */
interface Looked {
  seq: number;
  /** Minutes past turns took, by kind of set and stage, the latest last. */
  minutes: Map<string, number[]>;
}
const kept = new WeakMap<Queries, Looked>();

/** How long each stage takes for each kind of set: from its own past turns, or the hospital's usual time. */
export async function loadStageTimes(
  db: Reading,
): Promise<(configurationId: string, stage: Stage) => StageTime> {
  const { pastMinutes, usual } = await loadPastTurns(db);
  const known = new Map<string, StageTime>();
  return (configurationId, stage) => {
    const key = `${configurationId} ${stage}`;
    const time = known.get(key) ?? stageTime(stage, pastMinutes(configurationId, stage), usual[stage]);
    known.set(key, time);
    return time;
  };
}

/** The same with what nine turns in ten stay within. */
export async function loadStageSpreads(
  db: Reading,
): Promise<(configurationId: string, stage: Stage) => StageSpread> {
  const { pastMinutes, usual, longPercent } = await loadPastTurns(db);
  return (configurationId, stage) => {
    const p50 = usual[stage];
    const p90 = Math.ceil((p50 * longPercent) / 100);
    return stageSpread(stage, pastMinutes(configurationId, stage), { p50, p90 });
  };
}

async function loadPastTurns(db: Reading) {
  mayRead(db, 'readHospital');
  const { read } = db;
  const looked = kept.get(read) ?? { seq: 0, minutes: new Map() };
  kept.set(read, looked);
  const [ends, settings] = await Promise.all([
    read.select().from(stageEnds).where(gt(stageEnds.seq, looked.seq)).orderBy(asc(stageEnds.seq)),
    readSetting(read, 'stages'),
  ]);
  for (const one of ends) take(looked, one);
  const usual: Record<Stage, number> = {
    comingBack: settings.comingBackMinutes,
    washing: settings.washingMinutes,
    onBench: settings.benchMinutes,
    packed: settings.packedMinutes,
    inSteriliser: settings.steriliserMinutes,
    awaitingAcceptance: settings.acceptanceMinutes,
  };
  return {
    usual,
    longPercent: settings.longPercent,
    pastMinutes: (configurationId: string, stage: Stage): readonly number[] =>
      looked.minutes.get(`${configurationId} ${stage}`) ?? [],
  };
}

function take(
  looked: Looked,
  { seq, configurationId, stage, beganAt, endedAt }: typeof stageEnds.$inferSelect,
): void {
  const key = `${configurationId} ${stage}`;
  const minutes = Math.round((Date.parse(endedAt) - Date.parse(beganAt)) / 60_000);
  looked.minutes.set(key, [...(looked.minutes.get(key) ?? []), minutes].slice(-MOST_TURNS));
  looked.seq = seq;
}
