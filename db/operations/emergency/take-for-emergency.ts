import { eq, inArray } from 'drizzle-orm';
import type { ConstructSource } from '@/lib/emergency/asked';
import { goneProblems } from '@/lib/emergency/gone';
import type { Hit, Taking } from '@/lib/emergency/replan';
import { type CaseId, caseId, type NewId, planId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import type { Construct } from '@/lib/plans/plan';
import type { Booking } from '@/lib/theatre/booking';
import { emergencyWords as words } from '@/lib/wording/emergency';
import { theatreListWords } from '@/lib/wording/theatre-list';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import {
  cases,
  emergencies,
  emergencyQuestions,
  emergencySets,
  plans,
  setPromises,
  sets,
} from '../../schema';
import { bookInside } from '../book-case';
import type { CaseRow } from '../theatre/at-case';
import { keepPromise, type RoundTimes } from '../theatre/promises';
import { endPromises, giveInstead } from './give-way';
import { setGoes, takingProblems } from './set-goes';
import { stop, stopping } from './stop';
import { tellLeads } from './tell-leads';

/** A new case for the emergency, or one that is on the list already. */
export type EmergencyCase = { kind: 'new'; booking: Booking } | { kind: 'listed'; caseId: CaseId };

export interface TakeForEmergency {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  /** Four whole numbers from 0 to 31, drawn at random. */
  draw: () => number[];
  hospitalLetters: string;
  person: Person;
  target: EmergencyCase;
  from: ConstructSource;
  /** `null`: the plan is not known yet. */
  construct: Construct | null;
  neededAt: string;
  taking: Pick<Taking, 'fromAt' | 'sets' | 'packs'>;
  /** When the sets went to theatre, where they have gone already. */
  goneAt: string | null;
  /** What it does to others, as it was shown. */
  hits: readonly Hit[];
  /** The promises that was worked out from, by id. */
  madeFrom: ReadonlySet<string>;
  round: RoundTimes;
}

export interface TakenForEmergency {
  caseId: CaseId;
  reference: string;
}

/**
 * Takes sets for an emergency: the case, the promises, what others lose and get instead, what has gone already and what stays
 * open, all in one or nothing. Refused where promises were made or ended since what it does to others was worked out.
 */
export async function takeForEmergency(
  request: TakeForEmergency,
): Promise<Outcome<TakenForEmergency, never>> {
  const { db, person, taking, goneAt, now } = request;
  if (!may(person, 'takeForEmergency')) return refused('notPermitted', words.mayNotTake(person.name));
  if (taking.sets.length === 0)
    return refusedFor([{ path: ['sets'], code: 'needed', message: words.nothingTaken }]);
  const problems = goneAt === null ? [] : goneProblems(goneAt, now);
  if (problems.length > 0) return refusedFor(problems);
  return stopping(db.tx((write) => takeInside(write, request)));
}

async function takeInside(write: Queries, request: TakeForEmergency): Promise<TakenForEmergency> {
  const { madeFrom, now, newId, person, taking, goneAt } = request;
  const all = await write.select({ id: setPromises.id }).from(setPromises);
  if (all.length !== madeFrom.size || all.some(({ id }) => !madeFrom.has(id)))
    stop(refused('conflict', theatreListWords.planOvertaken));
  const booked = await caseOf(write, request);
  const way = {
    ...request,
    taking: { ...taking, caseId: caseId.parse(booked.id), reference: booked.reference },
  };
  await endPromises(write, way);
  for (const { setId, untilAt } of taking.sets)
    await keepPromise(write, {
      setId,
      caseId: booked.id,
      times: { fromAt: taking.fromAt, untilAt },
      chosenBy: 'person',
      personId: person.id,
      now,
      newId,
    });
  const rows = await setRows(write, request);
  if (goneAt === null) {
    const against = [];
    for (const set of rows) against.push(...(await takingProblems(write, set, booked, now)));
    if (against.length > 0) stop({ refusal: { because: 'frozen', problems: against, current: null } });
  }
  await giveInstead(write, way);
  await keepRecord(write, request, booked);
  if (goneAt !== null)
    for (const set of rows) await setGoes(write, { set, booked, goneAt, person, now, newId });
  return { caseId: caseId.parse(booked.id), reference: booked.reference };
}

async function setRows(write: Queries, { taking }: TakeForEmergency) {
  const ids = taking.sets.map(({ setId }) => setId);
  const rows = await write.select().from(sets).where(inArray(sets.id, ids));
  if (rows.length !== ids.length) stop(refused('notFound', theatreListWords.noSuchSet));
  return rows.sort((a, b) => a.code.localeCompare(b.code));
}

/** The case it is for: booked now, with the draft of its plan where a construct was chosen. */
async function caseOf(write: Queries, request: TakeForEmergency): Promise<CaseRow> {
  const { target, now } = request;
  if (target.kind === 'listed') {
    const [row] = await write.select().from(cases).where(eq(cases.id, target.caseId));
    if (!row) return stop(refused('notFound', theatreListWords.noSuchCase));
    if (row.cancelledAt !== null || row.endsAt <= now) stop(refused('frozen', words.over(row.reference)));
    const [before] = await write.select().from(emergencies).where(eq(emergencies.caseId, row.id));
    if (before) stop(refused('frozen', words.recordedAlready(row.reference)));
    return row;
  }
  const booked = await bookInside(write, { ...request, booking: target.booking });
  if (!booked.ok) return stop(refusedFor(booked.problems));
  await draftPlan(write, request, booked.value.id);
  const [row] = await write.select().from(cases).where(eq(cases.id, booked.value.id));
  return row as CaseRow;
}

/** A saved start brings its draft with the booking; what was planned for another case is copied here. */
async function draftPlan(write: Queries, request: TakeForEmergency, id: CaseId): Promise<void> {
  const { target, construct, now, newId, person, from } = request;
  if (construct === null || target.kind !== 'new' || target.booking.startId !== null) return;
  const plan = planId.parse(newId('plan'));
  await write.insert(plans).values({
    id: plan,
    caseId: id,
    version: 1,
    status: 'draft',
    body: construct,
    writtenBy: person.id,
    writtenAt: now,
    revision: 1,
  });
  await appendLedger(write, {
    doneAt: now,
    enteredAt: now,
    personId: person.id,
    action: 'begin-plan',
    subjectKind: 'plan',
    subjectId: plan,
    detail: { caseId: id, version: 1, from },
  });
}

async function keepRecord(write: Queries, request: TakeForEmergency, booked: CaseRow): Promise<void> {
  const { from, construct, neededAt, taking, hits, goneAt, person, now, newId } = request;
  const happenedAt = goneAt ?? now;
  await write.insert(emergencies).values({
    caseId: booked.id,
    constructFrom: from,
    construct,
    neededAt,
    packs: taking.packs,
    hits,
    happenedAt,
    recordedAt: now,
    recordedBy: person.id,
  });
  for (const { setId } of taking.sets)
    await write
      .insert(emergencySets)
      .values({ caseId: booked.id, setId, takenBy: person.id, takenAt: now, against: [] });
  const [confirmed] = await write
    .select({ status: plans.status })
    .from(plans)
    .where(eq(plans.caseId, booked.id))
    .orderBy(plans.version);
  const open = confirmed?.status === 'confirmed' ? (['count'] as const) : (['plan', 'count'] as const);
  for (const kind of open)
    await write
      .insert(emergencyQuestions)
      .values({ id: newId('openQuestion'), caseId: booked.id, kind, openedAt: now });
  const rows = await setRows(write, request);
  const codes = rows.map(({ code }) => code);
  await appendLedger(write, {
    doneAt: happenedAt,
    enteredAt: now,
    personId: person.id,
    action: 'take-for-emergency',
    subjectKind: 'case',
    subjectId: booked.id,
    detail: {
      sets: codes,
      packs: taking.packs,
      from,
      neededAt,
      hits: hits.map(({ reference }) => reference),
      ...(goneAt === null ? {} : { goneAt }),
    },
  });
  await tellLeads(write, {
    kind: 'emergencyTook',
    detail: { forCase: booked.reference, sets: codes, hits: hits.length, by: person.name },
    href: `/emergency/${booked.id}`,
    person,
    now,
    newId,
  });
}
