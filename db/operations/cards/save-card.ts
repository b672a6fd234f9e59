import { and, eq, isNull } from 'drizzle-orm';
import { type CardId, cardId, type NewId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { checkCard } from '@/lib/plans/card';
import { cardWords as words } from '@/lib/wording/cards';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { preferenceCards, preferenceCardVersions, procedures } from '../../schema';
import { cardProblems } from './card-problems';

interface SaveCard {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** As sent from outside; what is none of the list is refused. */
  procedureId: string;
  /** As sent from outside; parsed here. */
  card: unknown;
}

/** Makes a surgeon's own preference card for a procedure. There is one in use for each. */
export async function saveCard(request: SaveCard): Promise<Outcome<{ id: CardId }, never>> {
  const { db, now, newId, person, procedureId } = request;
  if (!may(person, 'keepCards')) return refused('notPermitted', words.mayNot(person.name));
  const checked = checkCard(request.card);
  return db.tx(async (write) => {
    const [procedure] = await write.select().from(procedures).where(eq(procedures.id, procedureId));
    const problems = [
      ...(checked.ok ? [] : checked.problems),
      ...(await procedureProblems(write, procedure, person)),
      ...(checked.ok && procedure
        ? await cardProblems(write, checked.value, {
            personId: person.id,
            region: procedure.region,
            before: null,
          })
        : []),
    ];
    if (problems.length > 0 || !checked.ok) return refusedFor(problems);
    const id = cardId.parse(newId('card'));
    await write.insert(preferenceCards).values({ id, personId: person.id, procedureId, version: 1 });
    await write
      .insert(preferenceCardVersions)
      .values({ cardId: id, version: 1, body: checked.value, savedBy: person.id, savedAt: now });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'save-card',
      subjectKind: 'card',
      subjectId: id,
      detail: { procedureId, starts: checked.value.startIds.length, extras: checked.value.extras.length },
    });
    return { ok: true, value: { id } };
  });
}

async function procedureProblems(
  write: Queries,
  procedure: typeof procedures.$inferSelect | undefined,
  person: Person,
): Promise<Problem[]> {
  const path = ['procedureId'];
  if (!procedure) return [{ path, code: 'procedure-unknown', message: words.noSuchProcedure }];
  if (procedure.withdrawnAt !== null)
    return [{ path, code: 'procedure-withdrawn', message: words.procedureWithdrawn(procedure.name) }];
  const [there] = await write
    .select({ id: preferenceCards.id })
    .from(preferenceCards)
    .where(
      and(
        eq(preferenceCards.personId, person.id),
        eq(preferenceCards.procedureId, procedure.id),
        isNull(preferenceCards.retiredAt),
      ),
    );
  return there ? [{ path, code: 'card-there', message: words.cardThere(procedure.name) }] : [];
}
