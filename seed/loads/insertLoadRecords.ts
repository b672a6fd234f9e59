import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { loadIndicators, loadPacks, loadReadings, loads, packs, packsInDoubt } from '@/db/schema';
import type { CycleReading } from '@/lib/loads/cycle/readCycle';
import { summarise } from '@/lib/loads/cycle/summary';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { STERILISERS } from '../turns/sterilisers';

type LoadRow = typeof loads.$inferSelect;
type Indicator = typeof loadIndicators.$inferInsert;

const SECONDS_APART = 5;

/**
 * Records of the demo's loads: every decided one with the indicators it was decided on, one biological result a day on
 * each steriliser, the open ones as they would lie on a lead's desk. One that was rejected shows a plateau too short.
 */
export async function insertLoadRecords(write: Queries): Promise<void> {
  const ran = (await write.select().from(loads))
    .filter(({ startedAt }) => startedAt !== null)
    .sort((a, b) => started(a).localeCompare(started(b)) || a.number.localeCompare(b.number));
  const biologicalOn = new Set<string>();
  const indicators = ran.flatMap((load): Indicator[] => {
    const day = `${load.steriliserId} ${(load.startedAt ?? '').slice(0, 10)}`;
    const withBiological = !biologicalOn.has(day);
    biologicalOn.add(day);
    return indicatorsOf(load, withBiological);
  });
  await insertMany(write, loadIndicators, indicators);
  const awaiting = ran.find(({ state }) => state === 'awaitingAcceptance');
  const rejected = ran.findLast(({ state }) => state === 'rejected');
  const accepted = ran.findLast(({ state }) => state === 'accepted');
  if (awaiting) await record(write, awaiting, cycleOf(215));
  if (rejected) await record(write, rejected, cycleOf(120));
  if (accepted) await record(write, accepted, cycleOf(225));
  if (awaiting) await lookAtFirst(write, awaiting);
  if (rejected) await inDoubt(write, rejected, ran);
}

function indicatorsOf(load: LoadRow, withBiological: boolean): Indicator[] {
  const decided = load.state === 'accepted' || load.state === 'rejected';
  if (load.state === 'makingUp') return [];
  const ranOn = plainDate.parse((load.startedAt ?? '').slice(0, 10));
  const base = { loadId: load.id, useBy: null, lot: null, position: null };
  const read = { readBy: load.endedBy, readAt: load.endedAt };
  const unread = { result: 'pending', readBy: null, readAt: null };
  const isRead = load.endedAt !== null;
  const chemical: Indicator = {
    ...base,
    id: `indicator_demo-${load.number.toLowerCase()}-1`,
    kind: 'chemical',
    lot: 'CI-2207',
    useBy: addDays(ranOn, 400),
    position: 'middle of the load',
    ...(isRead ? { result: load.state === 'rejected' ? 'failed' : 'passed', ...read } : unread),
  };
  const printed: Indicator = {
    ...base,
    id: `indicator_demo-${load.number.toLowerCase()}-2`,
    kind: 'printedRecord',
    ...(isRead ? { result: 'passed', ...read } : unread),
  };
  const biological: Indicator = {
    ...base,
    id: `indicator_demo-${load.number.toLowerCase()}-3`,
    kind: 'biological',
    lot: 'BI-0418',
    useBy: addDays(ranOn, 200),
    position: 'over the drain',
    ...(decided && load.state === 'accepted'
      ? { result: 'passed', readBy: load.decidedBy, readAt: load.decidedAt }
      : unread),
  };
  const waits = load.state === 'awaitingAcceptance';
  return [
    chemical,
    ...(isRead ? [printed] : []),
    ...((withBiological && load.state === 'accepted') || waits ? [biological] : []),
  ];
}

/** A cycle with three pulses of steam, a plateau at 134.6 °C for so long, and drying. */
function cycleOf(holdSeconds: number): CycleReading[] {
  const heat = [24, 60, 88, 104, 82, 96, 108, 84, 98, 110, 86, 104, 118, 127, 132.4];
  const rising = between(heat, 8);
  const holding = Array.from(
    { length: Math.round(holdSeconds / SECONDS_APART) + 1 },
    (_, at) => 134.6 + ((at * 7) % 5) / 10,
  );
  const falling = between([134.4, 118, 104, 92, 84, 78, 74, 71, 69], 10);
  return [...rising, ...holding, ...falling].map((celsius, at) => ({
    second: at * SECONDS_APART,
    millicelsius: Math.round(celsius * 10) * 100,
    millibar: null,
  }));
}

/** Straight lines through these points, with so many steps from each to the next. */
function between(points: readonly number[], steps: number): number[] {
  return points.flatMap((point, at) => {
    const next = points[at + 1];
    if (next === undefined) return [point];
    return Array.from({ length: steps }, (_, step) => point + ((next - point) * step) / steps);
  });
}

async function record(write: Queries, load: LoadRow, readings: CycleReading[]): Promise<void> {
  const steriliser = STERILISERS.find(({ id }) => id === load.steriliserId);
  const ran = steriliser?.programmes.find(({ name }) => name === load.programme);
  if (!ran || load.endedBy === null || load.endedAt === null) throw new Error(`${load.id} ran and ended`);
  const [low = 0, high = null] = ran.bandMillicelsius;
  const cycle = summarise(
    readings,
    { ...ran, bandMillicelsius: [low, high] },
    {
      importedBy: load.endedBy,
      importedAt: load.endedAt,
      fileName: `cycle-${load.cycleNumber ?? load.number}.csv`,
      understood: [`${readings.length} readings under “Chamber (°C)”, degrees Celsius.`],
    },
  );
  await insertMany(
    write,
    loadReadings,
    readings.map((one) => ({ ...one, loadId: load.id })),
  );
  await changeLoad(write, load, { cycle, ran });
}

/** The lead has begun to look at what came out: the first pack is sound, the others wait. */
async function lookAtFirst(write: Queries, load: LoadRow): Promise<void> {
  const inside = await packsInside(write, load);
  const numberOf = new Map((await write.select().from(packs)).map(({ id, number }) => [id, number]));
  const [first] = inside.sort((a, b) =>
    (numberOf.get(a.packId) ?? '').localeCompare(numberOf.get(b.packId) ?? ''),
  );
  if (!first) return;
  const seen = { unloadedAs: 'sound', unloadedBy: load.endedBy, unloadedAt: load.endedAt };
  await write
    .insert(loadPacks)
    .values({ ...first, ...seen })
    .onConflictDoUpdate({ target: [loadPacks.loadId, loadPacks.packId], set: seen });
}

const started = ({ startedAt }: LoadRow) => startedAt ?? '';

const packsInside = async (write: Queries, load: LoadRow) =>
  (await write.select().from(loadPacks)).filter(({ loadId }) => loadId === load.id);

async function changeLoad(write: Queries, load: LoadRow, change: Partial<LoadRow>): Promise<void> {
  await write
    .insert(loads)
    .values({ ...load, ...change })
    .onConflictDoUpdate({ target: loads.id, set: change });
}

/** What the rejected load put in doubt: itself, between the accepted ones before and after it. */
async function inDoubt(write: Queries, failed: LoadRow, ran: readonly LoadRow[]): Promise<void> {
  const speaking = ran.filter(
    ({ steriliserId, state }) => steriliserId === failed.steriliserId && state === 'accepted',
  );
  const since = speaking.findLast((one) => started(one) < started(failed));
  const until = speaking.find((one) => started(one) > started(failed));
  const failure = { of: 'other', sinceLoadId: since?.id ?? null, untilLoadId: until?.id ?? null };
  await changeLoad(write, failed, { failure });
  const inside = await packsInside(write, failed);
  await insertMany(
    write,
    packsInDoubt,
    inside.map(({ packId, loadId }) => ({ failedLoadId: failed.id, packId, loadId, fateThen: 'here' })),
  );
}
