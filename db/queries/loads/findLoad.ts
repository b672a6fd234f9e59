import { and, asc, eq, gt, isNull } from 'drizzle-orm';
import { type AcceptanceFinding, acceptanceFindings } from '@/lib/loads/acceptance';
import type { CycleReading } from '@/lib/loads/cycle/readCycle';
import { type ImplantException, implantException, type LoadState, loadState } from '@/lib/loads/load';
import { type Programme, programme, programmes } from '@/lib/loads/programme';
import { mayRead, type Reading } from '../../reader';
import { cases, items, loadReadings, loads, packs, people, places, sets, sterilisers } from '../../schema';
import { acceptanceFacts, type LoadFacts } from './acceptanceFacts';

interface Act {
  at: string;
  by: string;
}

/** A load as its screen shows it. */
export interface LoadOnFile {
  id: string;
  number: string;
  revision: number;
  state: LoadState;
  steriliser: { id: string; name: string };
  programmeName: string;
  /** `null` where the steriliser no longer has a programme of that name. */
  programme: Programme | null;
  cycleNumber: string | null;
  madeUp: Act;
  started: Act | null;
  ended: Act | null;
  decided: Act | null;
  reason: string | null;
  exception: ImplantException | null;
  facts: LoadFacts;
  findings: AcceptanceFinding[];
  readings: CycleReading[];
  importedBy: string | null;
}

/** One load with all that is known of it, or `null`. */
export async function findLoad(db: Reading, id: string): Promise<LoadOnFile | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [row] = await read
    .select({ load: loads, steriliser: sterilisers })
    .from(loads)
    .innerJoin(sterilisers, eq(sterilisers.id, loads.steriliserId))
    .where(eq(loads.id, id));
  if (!row) return null;
  const { load, steriliser } = row;
  const [facts, readings, everyone] = await Promise.all([
    acceptanceFacts(read, load),
    read.select().from(loadReadings).where(eq(loadReadings.loadId, id)).orderBy(asc(loadReadings.second)),
    read.select({ id: people.id, name: people.name }).from(people),
  ]);
  const nameOf = (personId: string | null) => everyone.find((one) => one.id === personId)?.name ?? 'somebody';
  const act = (by: string | null, at: string | null): Act | null =>
    at === null || by === null ? null : { at, by: nameOf(by) };
  return {
    id: load.id,
    number: load.number,
    revision: load.revision,
    state: loadState.parse(load.state),
    steriliser: { id: steriliser.id, name: steriliser.name },
    programmeName: load.programme,
    programme:
      load.ran !== null
        ? programme.parse(load.ran)
        : (programmes.parse(steriliser.programmes).find(({ name }) => name === load.programme) ?? null),
    cycleNumber: load.cycleNumber,
    madeUp: { at: load.madeUpAt, by: nameOf(load.madeUpBy) },
    started: act(load.startedBy, load.startedAt),
    ended: act(load.endedBy, load.endedAt),
    decided: act(load.decidedBy, load.decidedAt),
    reason: load.reason,
    exception: load.exception === null ? null : implantException.parse(load.exception),
    facts: {
      ...facts,
      indicators: facts.indicators.map((one) => ({
        ...one,
        readBy: one.readBy === null ? null : nameOf(one.readBy),
      })),
    },
    findings: acceptanceFindings(facts),
    readings,
    importedBy: facts.cycle === null ? null : nameOf(facts.cycle.importedBy),
  };
}

export interface WaitingPack {
  id: string;
  number: string;
  name: string;
  kind: 'set' | 'pouch';
  packedAt: string;
}

/** Closed packs in no load, the longest waiting first. */
export async function packsWaiting(db: Reading): Promise<WaitingPack[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ pack: packs, code: sets.code, step: sets.step, item: items.name })
    .from(packs)
    .leftJoin(sets, eq(sets.id, packs.setId))
    .leftJoin(items, eq(items.id, packs.itemId))
    .where(eq(packs.state, 'closed'))
    .orderBy(asc(packs.packedAt));
  return rows
    .filter(({ pack, step }) => pack.kind === 'pouch' || step === 'packed')
    .map(({ pack, code, item }) => ({
      id: pack.id,
      number: pack.number,
      name: code ?? item ?? pack.number,
      kind: pack.kind === 'set' ? 'set' : 'pouch',
      packedAt: pack.packedAt,
    }));
}

/** Where packs may be put, nearest first. */
export async function storePlaces(db: Reading): Promise<{ id: string; name: string }[]> {
  mayRead(db, 'readHospital');
  return db.read
    .select({ id: places.id, name: places.name })
    .from(places)
    .where(isNull(places.withdrawnAt))
    .orderBy(asc(places.metres));
}

/** Cases still to end, the next first: one of them is named in an exception. */
export async function casesToCome(
  db: Reading,
  now: string,
): Promise<{ id: string; reference: string; startsAt: string; surgeon: string }[]> {
  mayRead(db, 'readHospital');
  return db.read
    .select({ id: cases.id, reference: cases.reference, startsAt: cases.startsAt, surgeon: people.name })
    .from(cases)
    .innerJoin(people, eq(people.id, cases.surgeonId))
    .where(and(gt(cases.endsAt, now), isNull(cases.cancelledAt)))
    .orderBy(asc(cases.startsAt));
}
