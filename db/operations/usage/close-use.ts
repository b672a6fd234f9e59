import { desc, eq } from 'drizzle-orm';
import type { CaseId, NewId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { digestOfUse } from '@/lib/usage/digest';
import { questionText } from '@/lib/usage/questions';
import { reckonUse, type UseReckoned } from '@/lib/usage/reckon';
import { usageWords as words } from '@/lib/wording/usage';
import type { Database, Queries } from '../../client';
import { appendLedger, sha256 } from '../../ledger';
import type { Person } from '../../queries/people';
import { lastClosed } from '../../queries/theatreCounts/counted';
import { subjectOf, type TableFacts, tableFacts } from '../../queries/usage/tableFacts';
import { itemsAtTable, type TableItem, tableItems } from '../../queries/usage/tableItems';
import { caseUses, theatreCounts, theatreQuestions } from '../../schema';
import { movePiece } from './move-pieces';

interface CloseUse {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  caseId: CaseId;
  /** Every entry the screen knows, by id: while one of them is not here, or others are, the record stays open. */
  entryIds: readonly string[];
  /** What stays open, as it was shown to whoever closes it (`questionText`). */
  questions: readonly string[];
  attestation: Attestation;
}

export interface ClosedUse {
  closedAt: string;
  questions: number;
}

/**
 * Closes a record of use: every piece out is back, implanted or discarded, or what stays open is written into it by name. The
 * pieces leave their slots and the case at once, and what is said of single packs is said at the return too. Sent twice it
 * is answered as before.
 */
export async function closeUse(request: CloseUse): Promise<Outcome<ClosedUse, never>> {
  const { db, now, newId, person, caseId, entryIds, questions: shown, attestation } = request;
  return db.tx(async (write): Promise<Outcome<ClosedUse, never>> => {
    const facts = await tableFacts(write, caseId);
    if (!facts) return refused('notFound', words.noSuchCase);
    const { use } = facts;
    if (use?.closedAt != null)
      return use.closedBy === person.id
        ? { ok: true, value: { closedAt: use.closedAt, questions: (use.questions as unknown[]).length } }
        : refused('frozen', words.closed);
    if (!may(person, 'recordUse'))
      return refused('notPermitted', words.mayNot(person.name, 'close a record of use'));
    if (!use) return refused('frozen', words.nothingRecorded);
    if (!attests(attestation, person.id, 'iRecordedThis', now))
      return refused('notPermitted', words.proofNeeded);
    const missing = arrivals(facts, entryIds);
    if (missing) return refused('conflict', missing);
    const items = await tableItems(write, itemsAtTable(facts));
    const reckoned = reckonUse(subjectOf(facts), facts.entries, (id) => items.get(id) ?? null);
    const open = reckoned.questions.map(questionText);
    if (open.length !== shown.length || open.some((one) => !shown.includes(one)))
      return refused('conflict', words.otherQuestions);
    const digest = sha256(digestOfUse(caseId, facts.entries));
    const said = { meaning: attestation.meaning, method: attestation.method, at: attestation.at };
    const standing = new Map(reckoned.state.pieces.map((piece) => [piece.entryId, piece]));
    for (const { id, act, doneAt } of facts.entries) {
      const piece = standing.get(id);
      if (act.kind !== 'piece' || !piece) continue;
      const entry = { id, act, doneAt, reasonId: piece.reasonId };
      await movePiece(write, { facts, entry, personId: person.id, now, newId });
    }
    await askForLost(write, facts, reckoned, { items, now, newId });
    await write
      .update(caseUses)
      .set({
        closedBy: person.id,
        closedAt: now,
        entryCount: facts.entries.length,
        entryDigest: digest,
        questions: reckoned.questions,
        recorded: Object.fromEntries(
          facts.slots.map(({ setId, lineId, recorded }) => [`${setId} ${lineId}`, recorded]),
        ),
        attested: said,
      })
      .where(eq(caseUses.caseId, caseId));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'close-use',
      subjectKind: 'case',
      subjectId: caseId,
      detail: {
        entries: facts.entries.length,
        entryDigest: digest,
        pieces: reckoned.state.pieces.map(({ entryId, itemId, quantity, outcome, reasonId }) => ({
          entryId,
          itemId,
          quantity,
          outcome,
          ...(reasonId === null ? {} : { reasonId }),
        })),
        delays: reckoned.state.delays.length,
        differences: reckoned.differences.length,
        questions: reckoned.questions,
        attested: said,
      },
    });
    return { ok: true, value: { closedAt: now, questions: reckoned.questions.length } };
  });
}

function arrivals({ entries }: TableFacts, shown: readonly string[]): string | null {
  const here = new Set(entries.map(({ id }) => id));
  const missing = shown.filter((id) => !here.has(id)).length;
  if (missing > 0) return words.pending(missing);
  return new Set(shown).size === here.size ? null : words.changed;
}

/**
 * What was not found becomes a question of the counts in theatre, settled by two people like any other; where no count in
 * theatre was closed there is none to ask it, and it stays open by name in the record alone.
 */
async function askForLost(
  write: Queries,
  facts: TableFacts,
  { questions, accounts }: UseReckoned,
  { items, now, newId }: { items: Map<string, TableItem>; now: string; newId: NewId },
): Promise<void> {
  const lost = questions.filter((one) => one.kind === 'notFound');
  if (lost.length === 0) return;
  const count =
    (await lastClosed(write, facts.booked.id, 'final')) ??
    (await write
      .select()
      .from(theatreCounts)
      .where(eq(theatreCounts.caseId, facts.booked.id))
      .orderBy(desc(theatreCounts.closedAt))
      .limit(1)
      .then(([row]) => (row?.closedAt ? row : null)));
  if (!count) return;
  for (const { key, pieces } of lost) {
    const slot = facts.slots.find(({ setId, lineId }) => `${setId} ${lineId}` === key);
    const pack = facts.packs.find(({ pickId }) => pickId === key);
    const itemId = slot?.itemId ?? pack?.itemId ?? '';
    const counted = accounts.find((one) => one.key === key)?.back ?? 0;
    await write.insert(theatreQuestions).values({
      id: newId('question'),
      caseId: facts.booked.id,
      countId: count.id,
      setId: slot?.setId ?? null,
      lineId: slot?.lineId ?? null,
      itemId,
      thing: items.get(itemId)?.name ?? itemId,
      expected: counted + pieces,
      counted,
      openedAt: now,
    });
  }
}
