import { and, eq } from 'drizzle-orm';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { type Urgency, urgency } from '@/lib/theatre/surgicalCase';
import { theatreListWords as words } from '@/lib/wording/theatre-list';
import { appendLedger } from '../../ledger';
import { cases } from '../../schema';
import { tellPerson } from '../turns/tell-person';
import { atCase, type CaseNow, type CaseRequest } from './at-case';

interface ChangeUrgency extends CaseRequest {
  urgency: Urgency;
}

/** Makes a case more or less urgent. What is promised stays; who would get which set is worked out anew from here on. */
export async function changeUrgency(request: ChangeUrgency): Promise<Outcome<{ revision: number }, CaseNow>> {
  const { now, newId, person } = request;
  return atCase(request, 'keepTheatreList', async (write, row) => {
    if (row.cancelledAt !== null) return refused('frozen', words.cancelled(row.reference));
    if (row.endsAt <= now) return refused('frozen', words.over(row.reference));
    const from = urgency.parse(row.urgency);
    const to = request.urgency;
    if (from === to) return refused('frozen', words.urgencySame(row.reference));
    const revision = row.revision + 1;
    await write
      .update(cases)
      .set({ urgency: to, revision })
      .where(and(eq(cases.id, row.id), eq(cases.revision, row.revision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'change-urgency',
      subjectKind: 'case',
      subjectId: row.id,
      detail: { from, to },
    });
    if (row.surgeonId !== person.id)
      await tellPerson(write, {
        personId: row.surgeonId,
        kind: 'caseUrgencyChanged',
        detail: { caseReference: row.reference, from, to, by: person.name },
        href: `/cases/${row.id}`,
        now,
        newId,
      });
    return { ok: true, value: { revision } };
  });
}
