import { and, asc, desc, eq, gt, inArray, isNull } from 'drizzle-orm';
import { z } from 'zod';
import { type EmergencyQuestionKind, emergencyQuestionKind } from '@/lib/emergency/openQuestion';
import type { Hit } from '@/lib/emergency/replan';
import { type CaseId, caseId, type ItemId, itemId, type SetId, setId } from '@/lib/identity/ids';
import { type TurnStep, turnStep } from '@/lib/sets/setState';
import { mayRead, type Reading } from '../../reader';
import {
  cases,
  emergencies,
  emergencyQuestions,
  emergencySets,
  people,
  setPromises,
  sets,
  stock,
} from '../../schema';

/** A set taken for an emergency, with both times where it has gone. */
export interface EmergencySet {
  setId: SetId;
  code: string;
  step: TurnStep;
  heldBecause: string | null;
  takenAt: string;
  gone: { at: string; recordedAt: string; by: string } | null;
  against: string[];
}

export interface EmergencyQuestion {
  id: string;
  kind: EmergencyQuestionKind;
  setCode: string | null;
  openedAt: string;
  closed: { at: string; by: string } | null;
}

/** What is on record of an emergency. */
export interface EmergencyOnRecord {
  caseId: CaseId;
  neededAt: string;
  happenedAt: string;
  recordedAt: string;
  recordedBy: string;
  sets: EmergencySet[];
  packs: { itemId: ItemId; quantity: number }[];
  hits: Hit[];
  questions: EmergencyQuestion[];
}

const texts = z.array(z.string());
const packsKept = z.array(z.object({ stockId: z.string(), quantity: z.number() }));

/** Whether sets were taken for this case in an emergency. */
export async function isEmergency({ read, reader }: Reading, id: CaseId): Promise<boolean> {
  mayRead({ reader }, 'readHospital');
  const [kept] = await read
    .select({ caseId: emergencies.caseId })
    .from(emergencies)
    .where(eq(emergencies.caseId, id));
  return kept !== undefined;
}

/** The record of one emergency; `null`: nothing was taken for this case in an emergency. */
export async function findEmergency(db: Reading, id: CaseId): Promise<EmergencyOnRecord | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [[kept], taken, asked, everybody] = await Promise.all([
    read.select().from(emergencies).where(eq(emergencies.caseId, id)),
    read
      .select({ taken: emergencySets, set: sets })
      .from(emergencySets)
      .innerJoin(sets, eq(sets.id, emergencySets.setId))
      .where(eq(emergencySets.caseId, id))
      .orderBy(asc(sets.code)),
    read
      .select({ question: emergencyQuestions, setCode: sets.code })
      .from(emergencyQuestions)
      .leftJoin(sets, eq(sets.id, emergencyQuestions.setId))
      .where(eq(emergencyQuestions.caseId, id))
      .orderBy(asc(emergencyQuestions.openedAt), asc(emergencyQuestions.id)),
    read.select({ id: people.id, name: people.name }).from(people),
  ]);
  if (!kept) return null;
  const nameOf = (person: string | null) => everybody.find((one) => one.id === person)?.name ?? '';
  return {
    caseId: id,
    neededAt: kept.neededAt,
    happenedAt: kept.happenedAt,
    recordedAt: kept.recordedAt,
    recordedBy: nameOf(kept.recordedBy),
    sets: taken.map(({ taken: one, set }) => ({
      setId: setId.parse(set.id),
      code: set.code,
      step: turnStep.parse(set.step),
      heldBecause: set.heldBecause,
      takenAt: one.takenAt,
      gone:
        one.goneAt === null || one.goneRecordedAt === null
          ? null
          : { at: one.goneAt, recordedAt: one.goneRecordedAt, by: nameOf(one.goneRecordedBy) },
      against: texts.parse(one.against),
    })),
    packs: await packsOf(db, packsKept.parse(kept.packs)),
    // written by the operation alone, from the same type
    hits: kept.hits as Hit[],
    questions: asked.map(({ question, setCode }) => ({
      id: question.id,
      kind: emergencyQuestionKind.parse(question.kind),
      setCode,
      openedAt: question.openedAt,
      closed: question.closedAt === null ? null : { at: question.closedAt, by: nameOf(question.closedBy) },
    })),
  };
}

async function packsOf({ read }: Reading, packs: z.infer<typeof packsKept>) {
  const ids = packs.map(({ stockId }) => stockId);
  const rows = await read
    .select({ id: stock.id, itemId: stock.itemId })
    .from(stock)
    .where(inArray(stock.id, ids));
  return packs.flatMap(({ stockId, quantity }) => {
    const row = rows.find(({ id }) => id === stockId);
    return row ? [{ itemId: itemId.parse(row.itemId), quantity }] : [];
  });
}

/** An emergency that left something open. */
export interface OpenEmergency {
  caseId: CaseId;
  reference: string;
  startsAt: string;
  recordedAt: string;
  open: { kind: EmergencyQuestionKind; setCode: string | null }[];
}

/** Every emergency with a question that is still open, the newest first. */
export async function openEmergencies(db: Reading): Promise<OpenEmergency[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({
      question: emergencyQuestions,
      booked: cases,
      recordedAt: emergencies.recordedAt,
      code: sets.code,
    })
    .from(emergencyQuestions)
    .innerJoin(emergencies, eq(emergencies.caseId, emergencyQuestions.caseId))
    .innerJoin(cases, eq(cases.id, emergencyQuestions.caseId))
    .leftJoin(sets, eq(sets.id, emergencyQuestions.setId))
    .where(isNull(emergencyQuestions.closedAt))
    .orderBy(desc(emergencies.recordedAt), asc(emergencyQuestions.openedAt), asc(emergencyQuestions.id));
  const found = new Map<string, OpenEmergency>();
  for (const { question, booked, recordedAt, code } of rows) {
    const known = found.get(booked.id) ?? {
      caseId: caseId.parse(booked.id),
      reference: booked.reference,
      startsAt: booked.startsAt,
      recordedAt,
      open: [],
    };
    known.open.push({ kind: emergencyQuestionKind.parse(question.kind), setCode: code });
    found.set(booked.id, known);
  }
  return [...found.values()];
}

/** Sets taken for an emergency that has not begun with them, with the reference of its case: they are offered to no other. */
export async function takenForEmergencies(
  { read, reader }: Reading,
  now: string,
): Promise<Map<string, { caseId: string; reference: string }>> {
  mayRead({ reader }, 'readHospital');
  const rows = await read
    .select({ setId: emergencySets.setId, caseId: cases.id, reference: cases.reference })
    .from(emergencySets)
    .innerJoin(cases, eq(cases.id, emergencySets.caseId))
    .innerJoin(
      setPromises,
      and(eq(setPromises.caseId, emergencySets.caseId), eq(setPromises.setId, emergencySets.setId)),
    )
    .where(and(isNull(emergencySets.goneAt), isNull(cases.cancelledAt), gt(cases.endsAt, now)));
  return new Map(rows.map(({ setId: id, ...taken }) => [id, taken]));
}
