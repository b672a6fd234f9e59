import { eq } from 'drizzle-orm';
import type { Database } from '@/db/client';
import { addIndicator } from '@/db/operations/loads/add-indicator';
import { endLoad } from '@/db/operations/loads/end-load';
import { makeUpLoad } from '@/db/operations/loads/make-up-load';
import { putPackIn } from '@/db/operations/loads/put-pack-in';
import { startLoad } from '@/db/operations/loads/start-load';
import { unloadPack } from '@/db/operations/loads/unload-pack';
import { packsOfLoad } from '@/db/queries/loads/packsOfLoad';
import { listPeople, type Person } from '@/db/queries/people';
import { THE_PROGRAM } from '@/db/reader';
import { items, loads, packs, sets } from '@/db/schema';
import { type LoadId, loadId, type NewId, type PackId, packId, steriliserId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import type { UnloadedAs } from '@/lib/loads/load';
import { packNumberOf } from '@/lib/packs/packNumber';
import type { Attestation, Meaning } from '@/lib/people/attestation';
import type { Role } from '@/lib/people/role';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

/** A quarter of an hour after the demo was loaded. */
export const NOW = new Date(DEMO_NOW.getTime() + 15 * 60_000).toISOString();

let ids = 0;
export const newId: NewId = (prefix) => {
  ids += 1;
  return `${prefix}_test-${ids}`;
};

/** What an operation answered when it did what was asked. */
export function done<T>(outcome: Outcome<T, unknown>): T {
  if (!outcome.ok) throw new Error(outcome.refusal.problems.map(({ message }) => message).join(' | '));
  return outcome.value;
}

export type LoadHospital = Awaited<ReturnType<typeof loadHospital>>;

export async function loadHospital() {
  const db = await demoDatabase();
  const people = await listPeople({ read: db.read, reader: THE_PROGRAM });
  const one = (role: Role): Person => {
    const found = people.find((person) => person.role === role);
    if (!found) throw new Error(`the demo has a ${role}`);
    return found;
  };
  return { db, people, technician: one('technician'), lead: one('decontaminationLead'), one };
}

export const attested = (by: Person, meaning: Meaning, at = NOW): Attestation => ({
  personId: by.id,
  meaning,
  method: 'password',
  at,
});

export async function loadIn(db: Database, state: string) {
  const rows = await db.read.select().from(loads).where(eq(loads.state, state));
  const row = rows.sort((a, b) => b.number.localeCompare(a.number))[0];
  if (!row) throw new Error(`the demo has a load in state ${state}`);
  return { ...row, id: loadId.parse(row.id) };
}

export async function setCoded(db: Database, code: string) {
  const [row] = await db.read.select().from(sets).where(eq(sets.code, code));
  if (!row) throw new Error(`the demo has a set ${code}`);
  return row;
}

/** A closed pouch, as packing one leaves it. */
export async function closedPouch(db: Database, by: Person, kind = 'screw'): Promise<PackId> {
  const [item] = await db.read.select().from(items).where(eq(items.kind, kind)).limit(1);
  if (!item) throw new Error(`the catalogue has a ${kind}`);
  const id = packId.parse(newId('pack'));
  await db.tx((write) =>
    write.insert(packs).values({
      id,
      number: packNumberOf(9_000_000 + ids),
      kind: 'pouch',
      itemId: item.id,
      lot: 'LOT-7',
      barrier: 'pouch',
      packedBy: by.id,
      packedAt: NOW,
      contents: [],
      state: 'closed',
      revision: 1,
    }),
  );
  return id;
}

interface Run {
  steriliser?: 1 | 2;
  packs: readonly PackId[];
  at?: string;
  unloadedAs?: UnloadedAs;
}

/** A load made up, run, unloaded and with its indicators passed, so that only the decision is left. */
export async function ranLoad(
  hospital: LoadHospital,
  { steriliser = 1, packs: inside, at = NOW, unloadedAs = 'sound' }: Run,
): Promise<LoadId> {
  const { db, technician: person } = hospital;
  const common = { db, now: at, newId, person, baseRevision: null };
  const { id } = done(
    await makeUpLoad({
      ...common,
      steriliserId: steriliserId.parse(`steriliser_${steriliser}`),
      programme: '134 °C wrapped',
    }),
  );
  for (const one of inside) done(await putPackIn({ ...common, loadId: id, packId: one, copy: null }));
  done(await startLoad({ ...common, loadId: id, cycleNumber: '' }));
  done(await endLoad({ ...common, loadId: id }));
  await passIndicators(hospital, id, at);
  await lookAtAll(hospital, id, unloadedAs, at);
  return id;
}

export async function passIndicators(
  { db, technician: person }: LoadHospital,
  id: LoadId,
  at = NOW,
): Promise<void> {
  for (const kind of ['chemical', 'printedRecord'])
    done(
      await addIndicator({
        db,
        now: at,
        newId,
        person,
        baseRevision: null,
        loadId: id,
        entry: { kind, lot: 'CI-44', useBy: '2027-06-30', position: null, result: 'passed' },
      }),
    );
}

export async function lookAtAll(
  { db, technician: person }: LoadHospital,
  id: LoadId,
  as: UnloadedAs = 'sound',
  at = NOW,
): Promise<void> {
  for (const pack of await packsOfLoad(db.read, id))
    if (pack.unloadedAs === null)
      done(
        await unloadPack({
          db,
          now: at,
          newId,
          person,
          baseRevision: null,
          loadId: id,
          packId: packId.parse(pack.id),
          as,
        }),
      );
}
