import { eq, sql } from 'drizzle-orm';
import type { LoadId, NewId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { type LoadState, loadState } from '@/lib/loads/load';
import { type Act, may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { loadWords as words } from '@/lib/wording/loads';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { loads } from '../../schema';

export type LoadRow = typeof loads.$inferSelect;

/** What every act on one load is asked with. */
export interface LoadRequest {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  loadId: LoadId;
  /** The revision of the load that was seen. `null` where scans follow one another: such an act is safe at any revision. */
  baseRevision: number | null;
}

export interface LoadNow {
  revision: number;
  state: LoadState;
}

interface Acting {
  act: Act;
  /** Follows “… can’t ” and “you can’t … now”. */
  verb: string;
  /** States the act is open in. */
  while: readonly LoadState[];
}

/** Permission, load, revision and state are checked here, inside the write the act then makes. */
export async function atLoad<T>(
  request: LoadRequest,
  acting: Acting,
  work: (write: Queries, load: LoadRow) => Promise<Outcome<T, LoadNow>>,
): Promise<Outcome<T, LoadNow>> {
  const { db, person, loadId, baseRevision } = request;
  if (!may(person, acting.act)) return refused('notPermitted', words.notPermitted(person.name, acting.verb));
  return db.tx(async (write) => {
    const [load] = await write.select().from(loads).where(eq(loads.id, loadId));
    if (!load) return refused('notFound', words.noSuchLoad);
    const state = loadState.parse(load.state);
    const current: LoadNow = { revision: load.revision, state };
    if (baseRevision !== null && load.revision !== baseRevision)
      return refused('conflict', words.changed(load.number), current);
    if (!acting.while.includes(state))
      return refused('frozen', words.wrongState(load.number, state, acting.verb), current);
    return work(write, load);
  });
}

/** Changes the load, counts its revision up and writes the ledger; answers the new revision. */
export async function changeLoad(
  write: Queries,
  load: LoadRow,
  change: Partial<LoadRow>,
  entry: { action: string; person: Person; now: string; detail?: Record<string, unknown> },
): Promise<{ revision: number }> {
  const [changed] = await write
    .update(loads)
    .set({ ...change, revision: sql`${loads.revision} + 1` })
    .where(eq(loads.id, load.id))
    .returning({ revision: loads.revision });
  if (!changed) throw new Error(`${load.id} was there a moment ago`);
  await appendLedger(write, {
    doneAt: entry.now,
    enteredAt: entry.now,
    personId: entry.person.id,
    action: entry.action,
    subjectKind: 'load',
    subjectId: load.id,
    detail: { number: load.number, revision: changed.revision, ...entry.detail },
  });
  return changed;
}

/** A refusal for everything that stands in the way, at once. */
export const standingInTheWay = (
  problems: Problem[],
): { ok: false; refusal: { because: 'frozen'; problems: Problem[]; current: null } } => ({
  ok: false,
  refusal: { because: 'frozen', problems, current: null },
});

const MOST_CHARACTERS = 400;

/** A reason that goes on record: there where it is needed, not too long, and nothing about a patient in it. */
export function reasonProblems(reason: string, needed: string | null, path = 'reason'): Problem[] {
  const said = reason.trim();
  if (said === '') return needed === null ? [] : [{ path: [path], code: 'needed', message: needed }];
  if (said.length > MOST_CHARACTERS) return [{ path: [path], code: 'too-long', message: words.tooLong }];
  return textProblems(said, [path]);
}
