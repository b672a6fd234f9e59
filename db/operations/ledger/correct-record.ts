import { eq } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import {
  CORRECTION,
  type CorrectionTarget,
  canBeCorrected,
  correctionDetail,
  correctionProblems,
  correctionRequest,
  type Scalar,
  sameTarget,
  statedAt,
} from '@/lib/ledger/correction';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { correctionWords as words } from '@/lib/wording/ledger-corrections';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { correctionsQuery } from '../../queries/ledger/entries';
import type { Person } from '../../queries/people';
import { ledger } from '../../schema';

interface CorrectRecord {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  attestation: Attestation;
  /** As sent from outside; parsed here against `correctionRequest`. */
  request: unknown;
}

/**
 * Says of an earlier entry what in it is wrong: an entry of its own that keeps old, new, who and why. Nothing is edited.
 * What was corrected meanwhile by somebody else is answered as it stands.
 */
export async function correctRecord(
  given: CorrectRecord,
): Promise<Outcome<{ seq: number }, { stands: Scalar }>> {
  const { db, now, person, attestation } = given;
  if (!may(person, 'correctRecord')) return refused('notPermitted', words.notPermitted(person.name));
  if (!attests(attestation, person.id, 'iCorrect', now)) return refused('notPermitted', words.notProven);
  const parsed = correctionRequest.safeParse(given.request);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const request = parsed.data;
  return db.tx(async (write) => {
    const [entry] = await write.select().from(ledger).where(eq(ledger.seq, request.seq));
    if (!entry) return refused('notFound', words.noSuchEntry);
    if (!canBeCorrected(entry.action)) return refused('frozen', words.notCorrected);
    const stated = statedAt(entry, request.target);
    if (stated === undefined)
      return refusedFor([{ path: ['target'], code: 'no-such-value', message: words.noSuchValue }]);
    const stands = await standsNow(write, request.seq, request.target, stated);
    if (stands !== request.old) return refused('conflict', words.changed, { stands });
    const problems = [
      ...correctionProblems(request, entry, now),
      ...textProblems(request.reason, ['reason']),
      ...(typeof request.new === 'string' ? textProblems(request.new, ['new']) : []),
    ];
    if (problems.length > 0) return refusedFor(problems);
    const { seq } = await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: CORRECTION,
      subjectKind: entry.subjectKind,
      subjectId: entry.subjectId,
      detail: {
        corrects: entry.seq,
        entryHash: entry.hash,
        target: request.target,
        old: request.old,
        new: request.new,
        reason: request.reason,
        attested: { meaning: attestation.meaning, method: attestation.method, at: attestation.at },
      },
    });
    return { ok: true, value: { seq } };
  });
}

/** What holds at a target: the newest correction of it, or what the entry says. Remarks stand beside one another. */
async function standsNow(
  write: Queries,
  seq: number,
  target: CorrectionTarget,
  stated: Scalar,
): Promise<Scalar> {
  if (target.kind === 'remark') return null;
  const rows = await correctionsQuery(write, [seq]);
  const said = rows.map(({ detail }) => correctionDetail.parse(detail));
  return said.findLast((one) => sameTarget(one.target, target))?.new ?? stated;
}
