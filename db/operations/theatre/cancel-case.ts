import { and, eq } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { textProblems } from '@/lib/plans/checkConstruct';
import { theatreListWords as words } from '@/lib/wording/theatre-list';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { kitOnRecord, stands } from '../../queries/caseLife/standing';
import { cases, setPromises } from '../../schema';
import { tellPerson } from '../turns/tell-person';
import { atCase, type CaseNow, type CaseRequest, type CaseRow } from './at-case';
import { promisesOf } from './promises';

interface CancelCase extends CaseRequest {
  because: string;
}

const MOST_CHARACTERS = 400;

/** Takes a case off the list, with the reason. It stays on record, and what was promised to it is free again. */
export async function cancelCase(
  request: CancelCase,
): Promise<Outcome<{ revision: number; freed: string[] }, CaseNow>> {
  const { now, newId, person } = request;
  const because = request.because.trim();
  return atCase(request, 'keepTheatreList', async (write, row) => {
    if (row.cancelledAt !== null) return refused('frozen', words.cancelled(row.reference));
    if (row.endsAt <= now) return refused('frozen', words.over(row.reference));
    const problems = reasonProblems(because);
    if (problems.length > 0) return refusedFor(problems);
    const promised = await promisesOf(write, row.id);
    const freed = promised.map(({ setCode }) => setCode);
    await write.delete(setPromises).where(eq(setPromises.caseId, row.id));
    await write
      .update(cases)
      .set({ cancelledAt: now, cancelledBecause: because, revision: row.revision + 1 })
      .where(and(eq(cases.id, row.id), eq(cases.revision, row.revision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'cancel-case',
      subjectKind: 'case',
      subjectId: row.id,
      detail: { because, freed },
    });
    if (row.surgeonId !== person.id)
      await tellPerson(write, {
        personId: row.surgeonId,
        kind: 'caseCancelled',
        detail: { caseReference: row.reference, because, by: person.name },
        href: `/cases/${row.id}`,
        now,
        newId,
      });
    await tellPickers(write, row, request);
    return { ok: true, value: { revision: row.revision + 1, freed } };
  });
}

/** Whoever picked for it learns that there is something to put back. */
async function tellPickers(write: Queries, row: CaseRow, { person, now, newId }: CancelCase): Promise<void> {
  const kit = await kitOnRecord(write, row.id);
  const picked = kit?.picks.filter(stands) ?? [];
  for (const personId of new Set(picked.map(({ pickedBy }) => pickedBy)))
    await tellPerson(write, {
      personId,
      kind: 'kitToPutBack',
      detail: { caseReference: row.reference, things: picked.length, by: person.name },
      href: `/cases/${row.id}/pick`,
      now,
      newId,
    });
}

function reasonProblems(because: string): Problem[] {
  const path = ['because'];
  if (because === '') return [{ path, code: 'needed', message: words.reasonNeeded }];
  if (because.length > MOST_CHARACTERS) return [{ path, code: 'too-long', message: words.reasonTooLong }];
  return textProblems(because, path);
}
