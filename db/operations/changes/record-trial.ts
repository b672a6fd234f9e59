import type { Trial } from '@/lib/changes/trial';
import { type NewId, type TrialId, trialId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { type Act, may } from '@/lib/people/permissions';
import { changeWords } from '@/lib/wording/changes';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import { digestOf } from '../../queries/changes/digest';
import type { TrialSubject } from '../../queries/changes/trials';
import type { Person } from '../../queries/people';
import { changeTrials } from '../../schema';

interface RecordTrial {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  subject: TrialSubject;
  contentDigest: string;
  basisDigest: string;
  result: Trial;
}

const ACT: Record<TrialSubject['kind'], Act> = {
  'fit-rule': 'draftFitRule',
  'fit-exception': 'draftFitRule',
  'configuration-version': 'writeConfiguration',
};

/** Keeps what a person was shown of a change. An approval names it, so that nobody approves what they have not seen. */
export async function recordTrial(request: RecordTrial): Promise<Outcome<{ id: TrialId }>> {
  const { db, now, newId, person, subject, contentDigest, basisDigest, result } = request;
  if (!may(person, ACT[subject.kind])) return refused('notPermitted', changeWords.mayNotTry(person.name));
  const resultDigest = digestOf(result);
  return db.tx(async (write) => {
    const id = trialId.parse(newId('trial'));
    await write.insert(changeTrials).values({
      id,
      subjectKind: subject.kind,
      subjectId: subject.id,
      change: subject.change,
      contentDigest,
      basisDigest,
      resultDigest,
      result,
      triedBy: person.id,
      triedAt: now,
    });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'try-change',
      subjectKind: subject.kind,
      subjectId: subject.id,
      detail: { trialId: id, change: subject.change, contentDigest, resultDigest },
    });
    return { ok: true, value: { id } };
  });
}
