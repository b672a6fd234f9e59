import { eq } from 'drizzle-orm';
import type { CaseId, NewId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { type Act, may } from '@/lib/people/permissions';
import { theatreListWords as words } from '@/lib/wording/theatre-list';
import type { Database, Queries } from '../../client';
import type { Person } from '../../queries/people';
import { cases } from '../../schema';

export type CaseRow = typeof cases.$inferSelect;

/** What every act on one case of the theatre list is asked with. */
export interface CaseRequest {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  caseId: CaseId;
  /** The revision of the case that was seen. */
  baseRevision: number;
}

/** A case that somebody else changed, as it stands now. */
export interface CaseNow {
  revision: number;
  theatreId: string;
  startsAt: string;
  endsAt: string;
  cancelledAt: string | null;
}

const MAY_NOT = {
  keepTheatreList: words.mayNotKeepList,
  promiseSets: words.mayNotPromise,
} satisfies Partial<Record<Act, (name: string) => string>>;

/** One act on one case: permission, case and revision are checked here, inside the write it then makes. */
export async function atCase<T>(
  request: CaseRequest,
  act: keyof typeof MAY_NOT,
  work: (write: Queries, row: CaseRow) => Promise<Outcome<T, CaseNow>>,
): Promise<Outcome<T, CaseNow>> {
  const { db, person, caseId, baseRevision } = request;
  if (!may(person, act)) return refused('notPermitted', MAY_NOT[act](person.name));
  return db.tx(async (write) => {
    const [row] = await write.select().from(cases).where(eq(cases.id, caseId));
    if (!row) return refused('notFound', words.noSuchCase);
    if (row.revision !== baseRevision) {
      const { revision, theatreId, startsAt, endsAt, cancelledAt } = row;
      return refused('conflict', words.changed(row.reference), {
        revision,
        theatreId,
        startsAt,
        endsAt,
        cancelledAt,
      });
    }
    return work(write, row);
  });
}
