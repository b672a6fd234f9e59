import { and, asc, count, desc, eq, isNotNull } from 'drizzle-orm';
import {
  type CardId,
  cardId,
  type PersonId,
  type ProcedureId,
  personId,
  procedureId,
} from '@/lib/identity/ids';
import { type CardBody, cardBody } from '@/lib/plans/card';
import type { Construct } from '@/lib/plans/plan';
import { caseRegion } from '@/lib/theatre/surgicalCase';
import { mayRead, type Reading } from '../../reader';
import { caseOrigins, people, preferenceCards, preferenceCardVersions, procedures } from '../../schema';

/** A preference card in its present version. */
export interface CardOnFile {
  id: CardId;
  surgeon: { id: PersonId; name: string };
  procedure: { id: ProcedureId; name: string; region: Construct['region']; inUse: boolean };
  version: number;
  savedAt: string;
  body: CardBody;
  retiredAt: string | null;
  /** Cases booked by it, in whatever version. */
  used: number;
}

/** Every preference card, by surgeon and procedure; retired ones too. */
export async function listCards(db: Reading): Promise<CardOnFile[]> {
  mayRead(db, 'readHospital');
  return cardsWhere(db, undefined);
}

export async function findCard(db: Reading, id: string): Promise<CardOnFile | null> {
  mayRead(db, 'readHospital');
  const [found] = await cardsWhere(db, eq(preferenceCards.id, id));
  return found ?? null;
}

async function cardsWhere(
  { read }: Reading,
  where: ReturnType<typeof eq> | undefined,
): Promise<CardOnFile[]> {
  const [rows, uses] = await Promise.all([
    read
      .select({
        card: preferenceCards,
        surgeon: people.name,
        procedure: procedures,
        body: preferenceCardVersions.body,
        savedAt: preferenceCardVersions.savedAt,
      })
      .from(preferenceCards)
      .innerJoin(people, eq(people.id, preferenceCards.personId))
      .innerJoin(procedures, eq(procedures.id, preferenceCards.procedureId))
      .innerJoin(
        preferenceCardVersions,
        and(
          eq(preferenceCardVersions.cardId, preferenceCards.id),
          eq(preferenceCardVersions.version, preferenceCards.version),
        ),
      )
      .where(where)
      .orderBy(asc(people.name), asc(procedures.name), asc(preferenceCards.id)),
    read
      .select({ id: caseOrigins.cardId, n: count() })
      .from(caseOrigins)
      .where(isNotNull(caseOrigins.cardId))
      .groupBy(caseOrigins.cardId),
  ]);
  const used = new Map(uses.map(({ id, n }) => [id, n]));
  return rows.map(({ card, surgeon, procedure, body, savedAt }) => ({
    id: cardId.parse(card.id),
    surgeon: { id: personId.parse(card.personId), name: surgeon },
    procedure: {
      id: procedureId.parse(procedure.id),
      name: procedure.name,
      region: caseRegion.parse(procedure.region),
      inUse: procedure.withdrawnAt === null,
    },
    version: card.version,
    savedAt,
    body: cardBody.parse(body),
    retiredAt: card.retiredAt,
    used: used.get(card.id) ?? 0,
  }));
}

/** One version of a preference card. */
export interface CardVersion {
  version: number;
  body: CardBody;
  savedBy: string;
  savedAt: string;
}

/** Every version of a card, the newest first. */
export async function cardVersions(db: Reading, id: CardId): Promise<CardVersion[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ one: preferenceCardVersions, by: people.name })
    .from(preferenceCardVersions)
    .innerJoin(people, eq(people.id, preferenceCardVersions.savedBy))
    .where(eq(preferenceCardVersions.cardId, id))
    .orderBy(desc(preferenceCardVersions.version));
  return rows.map(({ one, by }) => ({
    version: one.version,
    body: cardBody.parse(one.body),
    savedBy: by,
    savedAt: one.savedAt,
  }));
}

/** The card a case was booked by, in the version it had then. */
export interface CardOfCase {
  id: CardId;
  surgeon: string;
  procedure: string;
  version: number;
  /** The version the card has by now. */
  newest: number;
  body: CardBody;
}

/** What a case began from: a card, a saved start, both or neither. */
export interface CaseOrigin {
  card: CardOfCase | null;
  start: { id: string; version: number } | null;
}

export async function originOfCase(db: Reading, caseId: string): Promise<CaseOrigin> {
  mayRead(db, 'readHospital');
  const [row] = await db.read
    .select({
      origin: caseOrigins,
      newest: preferenceCards.version,
      surgeon: people.name,
      procedure: procedures.name,
      body: preferenceCardVersions.body,
    })
    .from(caseOrigins)
    .leftJoin(preferenceCards, eq(preferenceCards.id, caseOrigins.cardId))
    .leftJoin(people, eq(people.id, preferenceCards.personId))
    .leftJoin(procedures, eq(procedures.id, preferenceCards.procedureId))
    .leftJoin(
      preferenceCardVersions,
      and(
        eq(preferenceCardVersions.cardId, caseOrigins.cardId),
        eq(preferenceCardVersions.version, caseOrigins.cardVersion),
      ),
    )
    .where(eq(caseOrigins.caseId, caseId));
  if (!row) return { card: null, start: null };
  const { origin, newest, surgeon, procedure, body } = row;
  return {
    card:
      origin.cardId === null || origin.cardVersion === null
        ? null
        : {
            id: cardId.parse(origin.cardId),
            surgeon: surgeon ?? '',
            procedure: procedure ?? '',
            version: origin.cardVersion,
            newest: newest ?? origin.cardVersion,
            body: cardBody.parse(body),
          },
    start:
      origin.startId === null || origin.startVersion === null
        ? null
        : { id: origin.startId, version: origin.startVersion },
  };
}
