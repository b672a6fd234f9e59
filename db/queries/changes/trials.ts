import { and, desc, eq } from 'drizzle-orm';
import { type Trial, trial } from '@/lib/changes/trial';
import { type PersonId, personId, type TrialId, trialId } from '@/lib/identity/ids';
import { mayRead, type Reading } from '../../reader';
import { changeTrials, people } from '../../schema';

/** What is tried: a rule, an exception or a version, put in force or withdrawn. */
export interface TrialSubject {
  kind: 'fit-rule' | 'fit-exception' | 'configuration-version';
  id: string;
  change: 'putInForce' | 'withdraw';
}

/** A trial as it was shown, by whom and when. */
export interface TrialOnFile {
  id: TrialId;
  by: { id: PersonId; name: string };
  at: string;
  contentDigest: string;
  basisDigest: string;
  result: Trial;
}

/** Of this change as it is now worded: the last trial of each person, the newest first. Trials of an earlier draft are left out. */
export async function trialsOf(
  db: Reading,
  { kind, id, change }: TrialSubject,
  contentDigest: string,
): Promise<TrialOnFile[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ trial: changeTrials, name: people.name })
    .from(changeTrials)
    .innerJoin(people, eq(people.id, changeTrials.triedBy))
    .where(
      and(
        eq(changeTrials.subjectKind, kind),
        eq(changeTrials.subjectId, id),
        eq(changeTrials.change, change),
        eq(changeTrials.contentDigest, contentDigest),
      ),
    )
    .orderBy(desc(changeTrials.triedAt));
  const seen = new Set<string>();
  return rows.flatMap(({ trial: row, name }) => {
    if (seen.has(row.triedBy)) return [];
    seen.add(row.triedBy);
    return [
      {
        id: trialId.parse(row.id),
        by: { id: personId.parse(row.triedBy), name },
        at: row.triedAt,
        contentDigest: row.contentDigest,
        basisDigest: row.basisDigest,
        result: trial.parse(row.result),
      },
    ];
  });
}
