import { and, eq, sql } from 'drizzle-orm';
import { draftFromItem, type ItemDraft } from '@/lib/catalogue/form/draft';
import { readDraft } from '@/lib/catalogue/form/read';
import type { Item } from '@/lib/catalogue/item';
import { type ItemOutcome, itemRefused } from '@/lib/catalogue/refusal';
import type { ItemId } from '@/lib/identity/ids';
import type { Problem } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { construct } from '@/lib/plans/plan';
import type { Database, Queries } from '../client';
import { appendLedger } from '../ledger';
import { itemFromRow, rowFromItem } from '../mappers/item';
import type { Person } from '../queries/people';
import { cases, items, plans } from '../schema';
import { findMaker, findRow, takenProblems } from './item-clashes';

interface EditItem {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  id: ItemId;
  /** The revision the form was filled from. */
  revision: number;
  draft: ItemDraft;
}

/**
 * Saves an item over the revision its form was filled from. When somebody changed it meanwhile the save is refused, and
 * the item as it stands comes back to be shown beside what was typed. Saving what is already there changes nothing.
 */
export async function editItem({
  db,
  now,
  person,
  id,
  revision,
  draft,
}: EditItem): Promise<ItemOutcome<{ id: ItemId; revision: number }>> {
  if (!may(person, 'editCatalogue')) {
    return itemRefused(
      'notPermitted',
      `${person.name} can’t change the catalogue: a theatre manager, a stock keeper or an administrator can.`,
    );
  }
  return db.tx(async (write) => {
    const row = await findRow(write, id);
    if (!row) return itemRefused('notFound', 'There is no such item.');
    const before = itemFromRow(row);
    const read = readDraft(before.kind, draft, { id, status: before.status });
    const gtin = (draft.gtin ?? '').trim() || null;
    const maker = await findMaker(write, draft.makerId ?? '');
    const problems = [
      ...(read.ok ? [] : read.problems),
      ...(await takenProblems(write, { id, code: (draft.code ?? '').trim(), gtin })),
      ...(read.ok ? await plannedHolesGone(write, before, read.value) : []),
    ];
    if (!maker && !problems.some(({ path }) => path[0] === 'makerId')) {
      problems.push({
        path: ['makerId'],
        code: 'maker-unknown',
        message: 'No such maker: choose one of the list.',
      });
    }
    const changed = read.ok ? changedFields(before, read.value) : [];
    if (read.ok && changed.length === 0) return { ok: true, value: { id, revision: row.revision } };
    if (row.revision !== revision) {
      return itemRefused('conflict', 'Somebody changed this item after you opened it.', {
        draft: draftFromItem(before),
        revision: row.revision,
      });
    }
    if (!read.ok || !maker || problems.length > 0) return itemRefused('invalid', problems);
    const [saved] = await write
      .update(items)
      .set(rowFromItem(read.value, revision + 1, maker.name))
      .where(and(eq(items.id, id), eq(items.revision, revision)))
      .returning({ revision: items.revision });
    if (!saved) throw new Error('the item changed inside its own transaction');
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'edit-item',
      subjectKind: 'item',
      subjectId: id,
      detail: { code: read.value.code, revision: saved.revision, changed },
    });
    return { ok: true, value: { id, revision: saved.revision } };
  });
}

/** Fields that differ, with both values where they are short; lists are only named. */
function changedFields(before: Item, after: Item): { field: string; from?: unknown; to?: unknown }[] {
  const old = before as unknown as Record<string, unknown>;
  return Object.entries(after).flatMap(([field, to]) => {
    const from = old[field];
    if (JSON.stringify(from) === JSON.stringify(to)) return [];
    return [Array.isArray(to) || Array.isArray(from) ? { field } : { field, from, to }];
  });
}

/** A confirmed plan names holes of the design it was made for: they can't be taken from under it. */
export async function plannedHolesGone(write: Queries, before: Item, after: Item): Promise<Problem[]> {
  if (before.kind !== 'plate' || after.kind !== 'plate') return [];
  const kept = new Set(after.holes.map(({ id }) => id));
  const gone = before.holes.map(({ id }) => id).filter((id) => !kept.has(id));
  if (gone.length === 0) return [];
  const rows = await write
    .select({ reference: cases.reference, body: plans.body })
    .from(plans)
    .innerJoin(cases, eq(cases.id, plans.caseId))
    .where(and(eq(plans.status, 'confirmed'), sql`instr(${plans.body}, ${`"${before.id}"`}) > 0`));
  return rows.flatMap(({ reference, body }) => {
    const planned = construct.parse(body).plates.filter(({ plateItemId }) => plateItemId === before.id);
    const used = gone.filter((id) => planned.some(({ fills }) => id in fills));
    return used.length === 0
      ? []
      : [
          {
            path: ['holes'],
            code: 'hole-in-confirmed-plan',
            message: `The confirmed plan of case ${reference} names ${used.join(', ')}: a changed design is a new item, so add it as one and withdraw this.`,
          },
        ];
  });
}
