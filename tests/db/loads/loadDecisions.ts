import { eq } from 'drizzle-orm';
import { packs, stock } from '@/db/schema';
import { type LoadId, placeId } from '@/lib/identity/ids';
import { attested, type LoadHospital, NOW, newId } from './loadWorld';

/** So many minutes after the moment of these tests, as an ISO instant. */
export const later = (minutes: number) => new Date(Date.parse(NOW) + minutes * 60_000).toISOString();

/** What the lead accepts a load with: proven, no reason, no exception. */
export function accepting({ db, lead }: LoadHospital, loadId: LoadId, now = NOW) {
  return {
    db,
    now,
    newId,
    person: lead,
    loadId,
    baseRevision: null,
    reason: '',
    setsPlaceId: placeId.parse('place_store-a'),
    pouchesPlaceId: placeId.parse('place_pouch-1'),
    exception: null,
    attestation: attested(lead, 'iAcceptThisLoad', now),
  };
}

/** What a technician rejects a load with; its sets are held. */
export const rejecting = ({ db, technician }: LoadHospital, loadId: LoadId, now = NOW) => ({
  db,
  now,
  newId,
  person: technician,
  loadId,
  baseRevision: null,
  reason: 'The printed record shows a pressure fault.',
  setsGo: 'held' as const,
  attestation: attested(technician, 'iRejectThisLoad', now),
});

/** A pack as it is now. */
export const packAt = async ({ db }: LoadHospital, id: string) =>
  (await db.read.select().from(packs).where(eq(packs.id, id)))[0];
/** The heap on the shelf a pouch lies in, once it is stored. */
export const shelfOf = async (hospital: LoadHospital, id: string) => {
  const stockId = (await packAt(hospital, id))?.stockId;
  if (!stockId) return null;
  return (await hospital.db.read.select().from(stock).where(eq(stock.id, stockId)))[0] ?? null;
};
