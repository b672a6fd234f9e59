import { and, eq } from 'drizzle-orm';
import { type LifeAct, mayDo } from '@/lib/caseLife/life';
import type { CaseId, NewId } from '@/lib/identity/ids';
import { changedTo, type Outcome, refused } from '@/lib/identity/refusal';
import { type Act, may } from '@/lib/people/permissions';
import { pickWords as words } from '@/lib/wording/case-life';
import type { Database, Queries } from '../../client';
import { type KitOnRecord, kitOnRecord, type LifeRow } from '../../queries/caseLife/standing';
import type { Person } from '../../queries/people';
import { caseLives, plans } from '../../schema';

/** What every act on the kit of a case is asked with. */
export interface KitRequest {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  caseId: CaseId;
}

export interface KitStepRequest extends KitRequest {
  /** The revision of the kit that was seen; 0 where there was none yet. */
  baseRevision: number;
}

interface Acting {
  act: Act;
  /** Follows “… can’t ”. */
  verb: string;
  step: LifeAct;
  /** Whether what is on record is this very act of this person's, sent again. */
  isRepeat: (life: LifeRow) => boolean;
}

/** A kit whose life was begun. */
export type BegunKit = KitOnRecord & { life: LifeRow };

/**
 * One step of a kit: permission, case, revision and stage are checked here, inside the write it then makes. A step whose
 * answer was lost and that is sent again answers as it did.
 */
export async function atKit<T extends { revision: number }>(
  request: KitStepRequest,
  acting: Acting,
  work: (write: Queries, kit: KitOnRecord) => Promise<Outcome<T, never>>,
): Promise<Outcome<{ revision: number }, never>> {
  const { db, person, caseId, baseRevision } = request;
  if (!may(person, acting.act)) return refused('notPermitted', words.mayNot(person.name, acting.verb));
  return db.tx(async (write): Promise<Outcome<{ revision: number }, never>> => {
    const kit = await kitOnRecord(write, caseId);
    if (!kit) return refused('notFound', words.noSuchCase);
    const { life, booked, stage } = kit;
    const revision = life?.revision ?? 0;
    if (revision !== baseRevision) {
      if (life && revision === baseRevision + 1 && acting.isRepeat(life))
        return { ok: true, value: { revision } };
      return changedTo(words.changed(booked.reference), revision);
    }
    if (!mayDo(stage, acting.step)) return refused('frozen', words.notNow(booked.reference, stage));
    return work(write, kit);
  });
}

/** Why a list no longer holds: another version of the plan is confirmed; `null` where it holds. */
export async function planProblem(write: Queries, { booked, life }: KitOnRecord): Promise<string | null> {
  const version = await confirmedVersion(write, booked.id);
  if (version === null) return words.noPlan(booked.reference);
  return life === null || life.planVersion === version
    ? null
    : words.planChanged(booked.reference, life.planVersion, version);
}

export async function confirmedVersion(write: Queries, caseId: string): Promise<number | null> {
  const [plan] = await write
    .select({ version: plans.version })
    .from(plans)
    .where(and(eq(plans.caseId, caseId), eq(plans.status, 'confirmed')));
  return plan?.version ?? null;
}

/** Changes the life of a kit from the revision that was read; answers the new one. */
export async function changeLife(
  write: Queries,
  life: LifeRow,
  change: Partial<Omit<LifeRow, 'caseId' | 'revision'>>,
): Promise<number> {
  const revision = life.revision + 1;
  const changed = await write
    .update(caseLives)
    .set({ ...change, revision })
    .where(and(eq(caseLives.caseId, life.caseId), eq(caseLives.revision, life.revision)))
    .returning({ id: caseLives.caseId });
  if (changed.length !== 1) throw new Error(`the kit of ${life.caseId} changed inside a write`);
  return revision;
}

/** What was said of the kit as a whole holds no longer once what lies with it changes. */
export const BACK_TO_PICKING = {
  pickedBy: null,
  pickedAt: null,
  pickedNote: null,
  checkedBy: null,
  checkedAt: null,
  checkId: null,
} as const;
