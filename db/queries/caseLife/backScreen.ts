import { inArray } from 'drizzle-orm';
import { type ReturnOutcome, returnOutcome } from '@/lib/caseLife/account';
import type { LifeStage } from '@/lib/caseLife/life';
import { mayRead, type Reading } from '../../reader';
import { people, sets } from '../../schema';
import { type PackAtTable, packsLeft } from '../usage/packsLeft';
import { pickNames } from './names';
import { kitOnRecord } from './standing';

/** Something that was issued, and what became of it. */
export interface IssuedThing {
  pickId: string;
  name: string;
  setId: string | null;
  stockId: string | null;
  itemId: string | null;
  packId: string | null;
  lot: string | null;
  quantity: number;
  stillOut: number;
  /** Held meanwhile: it takes no step until that is lifted. */
  held: boolean;
  /** Of single packs: what the record of use says of them, and how many of those are to be judged. */
  atTable: PackAtTable | null;
  returns: { outcome: ReturnOutcome; quantity: number; note: string | null; by: string; at: string }[];
}

/** What was issued to a case, as its return is entered; `null` when there is no such case. */
export async function backScreen(
  db: Reading,
  caseId: string,
): Promise<{ stage: LifeStage; things: IssuedThing[] } | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const kit = await kitOnRecord(read, caseId);
  if (!kit) return null;
  const issued = kit.picks.filter(({ issuedAt }) => issuedAt !== null);
  const [names, everybody, rows, atTable] = await Promise.all([
    pickNames(read, issued),
    read.select({ id: people.id, name: people.name }).from(people),
    read
      .select({ id: sets.id, step: sets.step })
      .from(sets)
      .where(
        inArray(
          sets.id,
          issued.flatMap(({ setId }) => setId ?? []),
        ),
      ),
    packsLeft(read, caseId),
  ]);
  const called = new Map(everybody.map(({ id, name }) => [id, name]));
  const things = issued.map((pick): IssuedThing => {
    const returns = kit.returns.filter(({ pickId }) => pickId === pick.id);
    return {
      pickId: pick.id,
      name: names.get(pick.id) ?? pick.id,
      setId: pick.setId,
      stockId: pick.stockId,
      itemId: pick.itemId,
      packId: pick.packId,
      lot: pick.lot,
      quantity: pick.quantity,
      stillOut: Math.min(
        pick.quantity - returns.reduce((sum, { quantity }) => sum + quantity, 0),
        atTable.get(pick.id)?.left ?? Infinity,
      ),
      atTable: atTable.get(pick.id) ?? null,
      held: rows.find(({ id }) => id === pick.setId)?.step === 'held',
      returns: returns.map(({ outcome, quantity, note, personId, doneAt }) => ({
        outcome: returnOutcome.parse(outcome),
        quantity,
        note,
        by: called.get(personId ?? '') ?? '',
        at: doneAt,
      })),
    };
  });
  return { stage: kit.stage, things };
}
