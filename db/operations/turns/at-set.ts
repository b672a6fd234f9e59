import { desc, eq } from 'drizzle-orm';
import type { NewId, SetId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { type Act, may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { type TurnStep, turnStep } from '@/lib/sets/setState';
import { doneWhen } from '@/lib/turns/actTime';
import { turnWords as words } from '@/lib/wording/turns';
import type { Database, Queries } from '../../client';
import type { Person } from '../../queries/people';
import { people, sets, turnSteps } from '../../schema';
import type { SetRow } from './take-step';

/** What every act on one set is asked with. */
export interface SetRequest {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  setId: SetId;
  /** The revision of the set that was seen. */
  baseRevision: number;
  /** When it was done, where that is earlier than now. */
  doneAt?: string | null | undefined;
  workstationId?: string | null | undefined;
}

/** Where a set is that somebody else changed, to be shown beside what was asked. */
export interface SetNow {
  revision: number;
  step: TurnStep;
  heldBecause: string | null;
  since: string;
  by: string | null;
}

type StepRow = typeof turnSteps.$inferSelect;

interface Acting {
  act: Act;
  /** Follows “… can’t ”. */
  verb: string;
  /** A reason or note that goes on record, with its rules. */
  text?: { name: 'note' | 'reason'; value: string | null; needed: boolean };
  /** Whether the last step kept is this very act: the same person's, sent twice, is done once. */
  isRepeat: (last: StepRow) => boolean;
}

/** What an act on one set works with: the set as it is, and when it was done. */
export interface AtSet {
  set: SetRow;
  doneAt: string;
}

/**
 * One act on one set: permission, set, revision, time and text are checked here, all inside the write it then makes.
 * An act whose answer was lost and that is sent again answers as it did.
 */
export async function atSet(
  request: SetRequest,
  acting: Acting,
  work: (write: Queries, at: AtSet) => Promise<Outcome<{ revision: number }, SetNow>>,
): Promise<Outcome<{ revision: number }, SetNow>> {
  const { db, now, person, setId, baseRevision } = request;
  if (!may(person, acting.act)) return refused('notPermitted', words.notPermitted(person.name, acting.verb));
  return db.tx(async (write) => {
    const [set] = await write.select().from(sets).where(eq(sets.id, setId));
    if (!set) return refused('notFound', words.noSuchSet);
    if (set.revision !== baseRevision) {
      const last = await lastStepOf(write, setId);
      const repeated =
        set.revision === baseRevision + 1 &&
        last?.row.personId === person.id &&
        last.row.step === set.step &&
        acting.isRepeat(last.row);
      if (repeated) return { ok: true, value: { revision: set.revision } };
      const current: SetNow = {
        revision: set.revision,
        step: turnStep.parse(set.step),
        heldBecause: set.heldBecause,
        since: set.stepSince,
        by: last?.by ?? null,
      };
      return refused('conflict', words.changedTo(set.code, current, now), current);
    }
    const when = doneWhen(request.doneAt, now, set.stepSince);
    const problems = [...when.problems, ...checkText(acting.text)];
    if (problems.length > 0) return refusedFor(problems);
    const done = await work(write, { set, doneAt: when.doneAt });
    return done.ok ? { ok: true, value: { revision: done.value.revision } } : done;
  });
}

async function lastStepOf(
  write: Queries,
  setId: string,
): Promise<{ row: StepRow; by: string | null } | undefined> {
  const [last] = await write
    .select({ row: turnSteps, by: people.name })
    .from(turnSteps)
    .leftJoin(people, eq(people.id, turnSteps.personId))
    .where(eq(turnSteps.setId, setId))
    .orderBy(desc(turnSteps.seq))
    .limit(1);
  return last;
}

const MOST_CHARACTERS = 400;

/** A reason or a note: there where it is needed, not too long, and nothing about a patient in it. */
function checkText(text: Acting['text']): Problem[] {
  if (!text) return [];
  const { name, value, needed } = text;
  const said = value?.trim() ?? '';
  if (said === '') {
    const message = name === 'reason' ? words.reasonNeeded : words.noteNeeded;
    return needed ? [{ path: [name], code: 'needed', message }] : [];
  }
  if (said.length > MOST_CHARACTERS) return [{ path: [name], code: 'too-long', message: words.tooLong }];
  return textProblems(said, [name]);
}
