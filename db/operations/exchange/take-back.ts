import { asc, desc, eq } from 'drizzle-orm';
import { z } from 'zod';
import type { ListKind } from '@/lib/exchange/list';
import { LISTS } from '@/lib/exchange/lists/lists';
import type { ImportId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { exchangeWords as words } from '@/lib/wording/exchange';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import { importEffects, imports } from '../../schema';
import { LIST_WORKS } from './list-works';
import type { Effect, WorkRequest } from './work';

interface TakeBack extends WorkRequest {
  db: Pick<Database, 'tx'>;
  importId: ImportId;
}

const leftAsItIs = z.array(z.object({ name: z.string(), because: z.string() }));

export interface TakenBackList {
  takenBack: number;
  /** What could not be taken back, each with why. */
  left: z.infer<typeof leftAsItIs>;
}

/**
 * Takes a list back: what is still as the list made it becomes what it was, by acts of their own with their own entries,
 * the last first. What was touched since stays as it is and is named. Nothing is erased, and it is done once.
 */
export async function takeListBack(request: TakeBack): Promise<Outcome<TakenBackList, never>> {
  const { db, now, person, importId } = request;
  return db.tx(async (write) => {
    const [row] = await write.select().from(imports).where(eq(imports.id, importId));
    if (!row) return refused('notFound', words.noSuchImport);
    const list = row.list as ListKind;
    if (!may(person, LISTS[list].bringIn)) return refused('notPermitted', words.mayNotTakeBack(person.name));
    if (row.takenBackAt !== null) return refused('frozen', words.takenBackAlready);
    const effects = await write
      .select()
      .from(importEffects)
      .where(eq(importEffects.importId, importId))
      .orderBy(desc(importEffects.effectNo), asc(importEffects.subjectId));
    const because = words.takenBackBecause(LISTS[list].name, row.broughtInAt.slice(0, 10));
    const left: TakenBackList['left'] = [];
    for (const effect of effects) {
      const why = await LIST_WORKS[list].takeBack(write, effect as Effect, { ...request, because });
      if (why !== null) left.push({ name: effect.name, because: why });
    }
    await write
      .update(imports)
      .set({ takenBackBy: person.id, takenBackAt: now, leftAsItIs: left })
      .where(eq(imports.id, importId));
    const takenBack = effects.length - left.length;
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'take-list-back',
      subjectKind: 'import',
      subjectId: importId,
      detail: { list, takenBack, left },
    });
    return { ok: true, value: { takenBack, left } };
  });
}
