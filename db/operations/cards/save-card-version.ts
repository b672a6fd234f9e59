import { and, eq } from 'drizzle-orm';
import type { CardId } from '@/lib/identity/ids';
import { changedTo, type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { cardBody, checkCard } from '@/lib/plans/card';
import { compareCards } from '@/lib/plans/compareCards';
import { cardWords as words } from '@/lib/wording/cards';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { preferenceCards, preferenceCardVersions, procedures } from '../../schema';
import { cardProblems } from './card-problems';

interface SaveCardVersion {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  cardId: CardId;
  /** The version the writer began from. */
  baseVersion: number;
  /** As sent from outside; parsed here. */
  card: unknown;
}

/**
 * Saves a change of a surgeon's own card as its next version; earlier ones stay, and cases booked by them keep them. Saved
 * twice, or without a change, it is no new version.
 */
export async function saveCardVersion(
  request: SaveCardVersion,
): Promise<Outcome<{ version: number }, never>> {
  const { db, now, person, cardId, baseVersion } = request;
  if (!may(person, 'keepCards')) return refused('notPermitted', words.mayNot(person.name));
  const checked = checkCard(request.card);
  if (!checked.ok) return refusedFor(checked.problems);
  return db.tx(async (write) => {
    const [row] = await write
      .select({ card: preferenceCards, body: preferenceCardVersions.body, region: procedures.region })
      .from(preferenceCards)
      .innerJoin(procedures, eq(procedures.id, preferenceCards.procedureId))
      .innerJoin(
        preferenceCardVersions,
        and(
          eq(preferenceCardVersions.cardId, preferenceCards.id),
          eq(preferenceCardVersions.version, preferenceCards.version),
        ),
      )
      .where(eq(preferenceCards.id, cardId));
    if (!row) return refused('notFound', words.noSuchCard);
    const { card, region } = row;
    if (card.personId !== person.id) return refused('notPermitted', words.notYours);
    if (card.retiredAt !== null) return refused('frozen', words.retired);
    const before = cardBody.parse(row.body);
    const changes = compareCards(before, checked.value);
    if (changes.length === 0) return { ok: true, value: { version: card.version } };
    if (card.version !== baseVersion) return changedTo(words.changed, card.version);
    const problems = await cardProblems(write, checked.value, { personId: person.id, region, before });
    if (problems.length > 0) return refusedFor(problems);
    const version = card.version + 1;
    await write
      .insert(preferenceCardVersions)
      .values({ cardId, version, body: checked.value, savedBy: person.id, savedAt: now });
    await write
      .update(preferenceCards)
      .set({ version })
      .where(and(eq(preferenceCards.id, cardId), eq(preferenceCards.version, baseVersion)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'save-card-version',
      subjectKind: 'card',
      subjectId: cardId,
      detail: { version, changed: [...new Set(changes.map(({ kind }) => kind))] },
    });
    return { ok: true, value: { version } };
  });
}
