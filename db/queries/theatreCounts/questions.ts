import { and, asc, eq, inArray, isNull } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import {
  type QuestionActKind,
  questionActKind,
  type SettledAs,
  settledAs,
  unaccounted,
} from '@/lib/theatreCounts/question';
import { mayRead, type Reading } from '../../reader';
import { cases, people, sets, theatreQuestionActs, theatreQuestions } from '../../schema';

/** A figure of a count in theatre that did not come out, with what was done about it. */
export interface TheatreQuestion {
  id: string;
  caseId: string;
  reference: string;
  set: { id: string; code: string } | null;
  thing: string;
  expected: number;
  counted: number;
  openedAt: string;
  /** Pieces nobody has accounted for. */
  unaccounted: number;
  acts: {
    id: string;
    kind: QuestionActKind;
    pieces: number | null;
    note: string | null;
    by: string;
    at: string;
  }[];
  settled: { as: SettledAs; by: string; with: string; at: string; because: string } | null;
}

/** Questions that are open of these sets, wherever the sets are; the oldest first. */
export function openQuestionsOf(db: Reading, setIds: readonly string[]): Promise<TheatreQuestion[]> {
  mayRead(db, 'readHospital');
  return questionsWhere(
    db,
    and(inArray(theatreQuestions.setId, [...setIds]), isNull(theatreQuestions.settledAt)),
  );
}

/** Every question of a case, settled ones too. */
export function questionsOfCase(db: Reading, caseId: string): Promise<TheatreQuestion[]> {
  mayRead(db, 'readHospital');
  return questionsWhere(db, eq(theatreQuestions.caseId, caseId));
}

/** Questions of these ids, settled ones too; the oldest first. */
export function questionsOf(db: Reading, ids: readonly string[]): Promise<TheatreQuestion[]> {
  mayRead(db, 'readHospital');
  return questionsWhere(db, inArray(theatreQuestions.id, [...ids]));
}

async function questionsWhere({ read }: Reading, where: ReturnType<typeof and>): Promise<TheatreQuestion[]> {
  const [by, together] = [alias(people, 'settler'), alias(people, 'together')];
  const rows = await read
    .select({
      row: theatreQuestions,
      reference: cases.reference,
      code: sets.code,
      by: by.name,
      together: together.name,
    })
    .from(theatreQuestions)
    .innerJoin(cases, eq(cases.id, theatreQuestions.caseId))
    .leftJoin(sets, eq(sets.id, theatreQuestions.setId))
    .leftJoin(by, eq(by.id, theatreQuestions.settledBy))
    .leftJoin(together, eq(together.id, theatreQuestions.settledWith))
    .where(where)
    .orderBy(asc(theatreQuestions.openedAt), asc(theatreQuestions.id));
  if (rows.length === 0) return [];
  const acts = await read
    .select({ act: theatreQuestionActs, by: people.name })
    .from(theatreQuestionActs)
    .innerJoin(people, eq(people.id, theatreQuestionActs.personId))
    .where(
      inArray(
        theatreQuestionActs.questionId,
        rows.map(({ row }) => row.id),
      ),
    )
    .orderBy(asc(theatreQuestionActs.doneAt), asc(theatreQuestionActs.id));
  return rows.map(({ row, reference, code, ...settlers }) => {
    const own = acts
      .filter(({ act }) => act.questionId === row.id)
      .map(({ act, by: name }) => ({
        id: act.id,
        kind: questionActKind.parse(act.kind),
        pieces: act.pieces,
        note: act.note,
        by: name,
        at: act.doneAt,
      }));
    return {
      id: row.id,
      caseId: row.caseId,
      reference,
      set: row.setId === null ? null : { id: row.setId, code: code ?? row.setId },
      thing: row.thing,
      expected: row.expected,
      counted: row.counted,
      openedAt: row.openedAt,
      unaccounted: unaccounted(row, own),
      acts: own,
      settled:
        row.settledAt === null
          ? null
          : {
              as: settledAs.parse(row.settledAs),
              by: settlers.by ?? '',
              with: settlers.together ?? '',
              at: row.settledAt,
              because: row.settledBecause ?? '',
            },
    };
  });
}
