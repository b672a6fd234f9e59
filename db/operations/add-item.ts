import type { ItemDraft } from '@/lib/catalogue/form/draft';
import { readDraft } from '@/lib/catalogue/form/read';
import type { ItemKind } from '@/lib/catalogue/item';
import { type ItemOutcome, itemRefused } from '@/lib/catalogue/refusal';
import type { ItemId } from '@/lib/identity/ids';
import { may } from '@/lib/people/permissions';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import { rowFromItem } from '../mappers/item';
import type { Person } from '../queries/people';
import { items } from '../schema';
import { findMaker, findRow, takenProblems } from './item-clashes';

interface AddItem {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  /** Made by the form, so that a form sent twice adds one item. */
  id: ItemId;
  kind: ItemKind;
  draft: ItemDraft;
}

/** Adds an item to the catalogue, or says everything that is wrong with it. Nothing is half-saved. */
export async function addItem({
  db,
  now,
  person,
  id,
  kind,
  draft,
}: AddItem): Promise<ItemOutcome<{ id: ItemId; revision: number }>> {
  if (!may(person, 'editCatalogue')) {
    return itemRefused(
      'notPermitted',
      `${person.name} can’t change the catalogue: a theatre manager, a stock keeper or an administrator can.`,
    );
  }
  const read = readDraft(kind, draft, { id, status: 'current' });
  return db.tx(async (write) => {
    const before = await findRow(write, id);
    if (before) return { ok: true, value: { id, revision: before.revision } };
    const code = (draft.code ?? '').trim();
    const gtin = (draft.gtin ?? '').trim() || null;
    const maker = await findMaker(write, draft.makerId ?? '');
    const problems = [...(read.ok ? [] : read.problems), ...(await takenProblems(write, { id, code, gtin }))];
    if (!maker && !problems.some(({ path }) => path[0] === 'makerId')) {
      problems.push({
        path: ['makerId'],
        code: 'maker-unknown',
        message: 'No such maker: choose one of the list.',
      });
    }
    if (!read.ok || !maker || problems.length > 0) return itemRefused('invalid', problems);
    await write.insert(items).values(rowFromItem(read.value, 1, maker.name));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'add-item',
      subjectKind: 'item',
      subjectId: id,
      detail: { code: read.value.code, name: read.value.name, kind },
    });
    return { ok: true, value: { id, revision: 1 } };
  });
}
