import { and, eq, isNull } from 'drizzle-orm';
import type { CardId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { cardWords as words } from '@/lib/wording/cards';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { preferenceCards, procedures } from '../../schema';

interface RetireCard {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  cardId: CardId;
  /** `false` brings it back, where no other card is in use for that surgeon and procedure. */
  retire: boolean;
}

/** Takes a preference card out of use, or brings it back: its surgeon, or a theatre manager. Cases booked by it keep it. */
export async function retireCard(request: RetireCard): Promise<Outcome<null, never>> {
  const { db, now, person, cardId, retire } = request;
  return db.tx(async (write) => {
    const [row] = await write
      .select({ card: preferenceCards, procedure: procedures.name })
      .from(preferenceCards)
      .innerJoin(procedures, eq(procedures.id, preferenceCards.procedureId))
      .where(eq(preferenceCards.id, cardId));
    if (!row) return refused('notFound', words.noSuchCard);
    const { card, procedure } = row;
    const own = card.personId === person.id && may(person, 'keepCards');
    if (!own && !may(person, 'retireCards')) return refused('notPermitted', words.mayNotRetire(person.name));
    if ((card.retiredAt !== null) === retire) return { ok: true, value: null };
    if (!retire) {
      const [other] = await write
        .select({ id: preferenceCards.id })
        .from(preferenceCards)
        .where(
          and(
            eq(preferenceCards.personId, card.personId),
            eq(preferenceCards.procedureId, card.procedureId),
            isNull(preferenceCards.retiredAt),
          ),
        );
      if (other) return refused('frozen', words.otherInUse(procedure));
    }
    await write
      .update(preferenceCards)
      .set({ retiredAt: retire ? now : null, retiredBy: retire ? person.id : null })
      .where(eq(preferenceCards.id, cardId));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: retire ? 'retire-card' : 'bring-back-card',
      subjectKind: 'card',
      subjectId: cardId,
      detail: { of: card.personId },
    });
    return { ok: true, value: null };
  });
}
