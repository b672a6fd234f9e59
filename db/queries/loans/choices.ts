import { and, asc, eq, gt, gte, inArray, isNull, lte, or } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import { cases, configurations, configurationVersions, lenders, people, places } from '../../schema';

interface NamedCase {
  id: string;
  reference: string;
  startsAt: string;
  surgeon: string;
}

/** What a request may name: lenders in use, cases to come, and kinds of ours in force. */
interface RequestChoices {
  lenders: { id: string; name: string }[];
  cases: NamedCase[];
  configurations: { id: string; code: string; name: string }[];
}

export async function requestChoices(db: Reading, now: string): Promise<RequestChoices> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [lending, toCome, kinds] = await Promise.all([
    read
      .select({ id: lenders.id, name: lenders.name })
      .from(lenders)
      .where(isNull(lenders.withdrawnAt))
      .orderBy(asc(lenders.name)),
    casesWhere(db, and(gt(cases.startsAt, now), isNull(cases.cancelledAt))),
    read
      .select({ id: configurations.id, code: configurations.code, name: configurations.name })
      .from(configurations)
      .innerJoin(configurationVersions, eq(configurationVersions.configurationId, configurations.id))
      .where(
        and(
          eq(configurationVersions.status, 'inForce'),
          isNull(configurations.withdrawnAt),
          isNull(configurations.loanId),
        ),
      )
      .orderBy(asc(configurations.code)),
  ]);
  return { lenders: lending, cases: toCome, configurations: kinds };
}

/** What the forms of one loan offer: places in use, who may be asked to decide, and cases it may have been used in. */
export interface LoanChoices {
  places: { id: string; name: string }[];
  deciders: { id: string; name: string; role: string }[];
  cases: NamedCase[];
}

const DAYS_BACK = 30;

export async function loanChoices(db: Reading, surgeonId: string | null, now: string): Promise<LoanChoices> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const from = new Date(Date.parse(now) - DAYS_BACK * 86_400_000).toISOString();
  const [standing, asked, begun] = await Promise.all([
    read
      .select({ id: places.id, name: places.name })
      .from(places)
      .where(isNull(places.withdrawnAt))
      .orderBy(asc(places.name)),
    read
      .select({ id: people.id, name: people.name, role: people.role })
      .from(people)
      .where(
        and(
          isNull(people.leftAt),
          or(
            inArray(people.role, ['theatreManager', 'decontaminationLead']),
            surgeonId === null ? eq(people.role, 'surgeon') : eq(people.id, surgeonId),
          ),
        ),
      )
      .orderBy(asc(people.name)),
    casesWhere(db, and(lte(cases.startsAt, now), gte(cases.startsAt, from))),
  ]);
  return { places: standing, deciders: asked, cases: begun };
}

function casesWhere({ read }: Reading, which: ReturnType<typeof and>): Promise<NamedCase[]> {
  return read
    .select({ id: cases.id, reference: cases.reference, startsAt: cases.startsAt, surgeon: people.name })
    .from(cases)
    .innerJoin(people, eq(people.id, cases.surgeonId))
    .where(which)
    .orderBy(asc(cases.startsAt));
}
