import { eq } from 'drizzle-orm';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { packWords as words } from '@/lib/wording/packs';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { sets, sheetPrints } from '../../schema';
import { nextSheetNumber } from './next-number';

interface PrintSheet {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  setId: string;
}

export interface SheetPrinted {
  number: string;
  versionId: string;
  setRevision: number;
}

/** Numbers a count sheet as it is printed, with the version and revision that stand on it, so that an old one is known. */
export async function printSheet(request: PrintSheet): Promise<Outcome<SheetPrinted>> {
  const { db, now, person, setId } = request;
  if (!may(person, 'readHospital'))
    return refused('notPermitted', words.notPermitted(person.name, 'print count sheets'));
  return db.tx(async (write) => {
    const [set] = await write.select().from(sets).where(eq(sets.id, setId));
    if (!set) return refused('notFound', words.noSuchSet);
    const number = await nextSheetNumber(write);
    const printed = { number, versionId: set.versionId, setRevision: set.revision };
    await write.insert(sheetPrints).values({ ...printed, setId, printedBy: person.id, printedAt: now });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'print-sheet',
      subjectKind: 'set',
      subjectId: setId,
      detail: printed,
    });
    return { ok: true, value: printed };
  });
}
