import { and, eq, sql } from 'drizzle-orm';
import type { PackId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { loadWords as words } from '@/lib/wording/loads';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import { biologicalWaitedFor } from '../../queries/loads/implantsWait';
import type { Person } from '../../queries/people';
import { loads, packs, stock } from '../../schema';
import { reasonProblems } from './at-load';

interface LiftPouchHold {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  packId: PackId;
  reason: string;
  /** That this person proved who they are and said `iLiftThisHold`. */
  attestation: Attestation;
}

/**
 * Lifts the hold of a pouch whose load was in doubt. One whose own load failed stays held: it never became sterile;
 * so does an implant whose load's biological result has not passed.
 */
export async function liftPouchHold(request: LiftPouchHold): Promise<Outcome<{ stockId: string }>> {
  const { db, now, person, packId, attestation } = request;
  const reason = request.reason.trim();
  if (!may(person, 'liftHold')) return refused('notPermitted', words.notPermitted(person.name, 'lift holds'));
  if (!attests(attestation, person.id, 'iLiftThisHold', now))
    return refused('notPermitted', words.proveFirst);
  const problems = reasonProblems(reason, words.reasonNeeded);
  if (problems.length > 0) return refusedFor(problems);
  return db.tx(async (write) => {
    const [row] = await write
      .select({ pack: packs, stock, load: loads.state })
      .from(packs)
      .innerJoin(stock, eq(stock.id, packs.stockId))
      .leftJoin(loads, eq(loads.id, packs.loadId))
      .where(and(eq(packs.id, packId), eq(packs.kind, 'pouch')));
    if (!row) return refused('notFound', words.noSuchPack);
    if (row.stock.heldBecause === null) return refused('frozen', words.notHeld);
    if (row.stock.heldBecause !== 'loadUnknown' || row.pack.state !== 'sterile')
      return refused('frozen', words.holdStays);
    if (row.load !== 'accepted') return refused('frozen', words.loadNotAccepted);
    const waitsFor = await biologicalWaitedFor(write, packId);
    if (waitsFor !== null) return refused('frozen', words.waitsForBiological(waitsFor));
    await write
      .update(stock)
      .set({ heldBecause: null, revision: sql`${stock.revision} + 1` })
      .where(eq(stock.id, row.stock.id));
    const { meaning, method, at } = attestation;
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'lift-pouch-hold',
      subjectKind: 'stock',
      subjectId: row.stock.id,
      detail: { packId, packNumber: row.pack.number, reason, attested: { meaning, method, at } },
    });
    return { ok: true, value: { stockId: row.stock.id } };
  });
}
