import { and, asc, desc, eq, gte, isNull, lt } from 'drizzle-orm';
import { type CaseId, caseId, type PersonId, personId, type TheatreId, theatreId } from '@/lib/identity/ids';
import type { Construct } from '@/lib/plans/plan';
import type { PlanVersion } from '@/lib/plans/planVersion';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { caseRegion, limb, type Urgency, urgency } from '@/lib/theatre/surgicalCase';
import { planFromRow } from '../mappers/plan';
import { mayRead, type Reading } from '../reader';
import { cases, people, plans, theatres } from '../schema';

/** A case as it is booked. */
export interface BookedCaseRow {
  id: CaseId;
  reference: string;
  theatreId: TheatreId;
  theatre: string;
  caseDate: PlainDate;
  startsAt: string;
  endsAt: string;
  region: Construct['region'];
  limb: 'left' | 'right';
  surgeonId: PersonId;
  surgeon: string;
  urgency: Urgency;
  revision: number;
  /** When and why it was cancelled; `null` while it is on the list. */
  cancelled: { at: string; because: string } | null;
}

/** A case on the theatre list, with how far its plan is. */
export interface ListedCase extends BookedCaseRow {
  /** The version that counts, and whether a newer draft is being written. */
  plan: { confirmedVersion: number | null; draftVersion: number | null };
}

const booked = {
  id: cases.id,
  reference: cases.reference,
  theatreId: cases.theatreId,
  theatre: theatres.name,
  caseDate: cases.caseDate,
  startsAt: cases.startsAt,
  endsAt: cases.endsAt,
  region: cases.region,
  limb: cases.limb,
  surgeonId: cases.surgeonId,
  surgeon: people.name,
  urgency: cases.urgency,
  revision: cases.revision,
  cancelledAt: cases.cancelledAt,
  cancelledBecause: cases.cancelledBecause,
};

type Words = Exclude<keyof typeof booked, 'revision' | 'cancelledAt' | 'cancelledBecause'>;
type Row = { [K in Words]: string } & {
  revision: number;
  cancelledAt: string | null;
  cancelledBecause: string | null;
};

function bookedCase({ cancelledAt, cancelledBecause, ...row }: Row): BookedCaseRow {
  return {
    ...row,
    cancelled: cancelledAt === null ? null : { at: cancelledAt, because: cancelledBecause ?? '' },
    id: caseId.parse(row.id),
    theatreId: theatreId.parse(row.theatreId),
    caseDate: plainDate.parse(row.caseDate),
    region: caseRegion.parse(row.region),
    limb: limb.parse(row.limb),
    surgeonId: personId.parse(row.surgeonId),
    urgency: urgency.parse(row.urgency),
  };
}

/** The theatre list from one date up to, but without, another: by time, then theatre. What was cancelled is left out unless asked for. */
export async function listCases(
  db: Reading,
  from: PlainDate,
  before: PlainDate,
  { cancelledToo = false }: { cancelledToo?: boolean } = {},
): Promise<ListedCase[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const within = and(
    gte(cases.caseDate, from),
    lt(cases.caseDate, before),
    cancelledToo ? undefined : isNull(cases.cancelledAt),
  );
  const [rows, versions] = await Promise.all([
    read
      .select(booked)
      .from(cases)
      .innerJoin(theatres, eq(theatres.id, cases.theatreId))
      .innerJoin(people, eq(people.id, cases.surgeonId))
      .where(within)
      .orderBy(asc(cases.startsAt), asc(theatres.name)),
    read
      .select({ caseId: plans.caseId, version: plans.version, status: plans.status })
      .from(plans)
      .innerJoin(cases, eq(cases.id, plans.caseId))
      .where(within),
  ]);
  const versionOf = (id: string, status: string) =>
    versions.find((plan) => plan.caseId === id && plan.status === status)?.version ?? null;
  return rows.map((row) => ({
    ...bookedCase(row),
    plan: { confirmedVersion: versionOf(row.id, 'confirmed'), draftVersion: versionOf(row.id, 'draft') },
  }));
}

/** One case by its id; `null` when there is none. */
export async function findCase(db: Reading, id: string): Promise<BookedCaseRow | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [row] = await read
    .select(booked)
    .from(cases)
    .innerJoin(theatres, eq(theatres.id, cases.theatreId))
    .innerJoin(people, eq(people.id, cases.surgeonId))
    .where(eq(cases.id, id));
  return row ? bookedCase(row) : null;
}

/** All versions of a case's plan, the newest first. */
export async function listPlanVersions(db: Reading, id: string): Promise<PlanVersion[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const rows = await read.select().from(plans).where(eq(plans.caseId, id)).orderBy(desc(plans.version));
  return rows.map(planFromRow);
}

/** What a booking chooses from. */
export async function bookingChoices(db: Reading) {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [rooms, surgeons] = await Promise.all([
    read.select().from(theatres).orderBy(asc(theatres.name)),
    read
      .select({ id: people.id, name: people.name })
      .from(people)
      .where(eq(people.role, 'surgeon'))
      .orderBy(asc(people.name)),
  ]);
  return { theatres: rooms, surgeons };
}
