import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import {
  calendarFeeds,
  caseOrigins,
  planStarts,
  planStartVersions,
  preferenceCards,
  preferenceCardVersions,
  procedures,
} from '@/db/schema';
import { hashCode, newToken } from '@/db/secrets';
import { cardBody } from '@/lib/plans/card';
import { SAVED_STARTS } from '../cases/savedStarts';
import type { DemoPerson } from '../hospital/people';
import type { HospitalClock } from '../hospitalClock';
import { CARDS, ORIGINS, PROCEDURES } from './cards';

const DAY_MINUTES = 1440;

/** Saved starts and preference cards with their versions, and which cases of the demo began from them. After the cases. */
export async function insertCards(write: Queries, clock: HospitalClock): Promise<void> {
  await insertStarts(write, clock);
  await insertMany(
    write,
    procedures,
    PROCEDURES.map((one) => ({ ...one })),
  );
  for (const { id, personId, procedureId, versions, retired } of CARDS) {
    await insertMany(write, preferenceCards, [
      {
        id,
        personId,
        procedureId,
        version: versions.length,
        retiredAt: retired ? clock.minutesFromNow(-retired.daysAgo * DAY_MINUTES) : null,
        retiredBy: retired?.by ?? null,
      },
    ]);
    await insertMany(
      write,
      preferenceCardVersions,
      versions.map(({ daysAgo, starts, wanted, note }, at) => ({
        cardId: id,
        version: at + 1,
        body: cardBody.parse({
          startIds: starts,
          extras: wanted.map(([code, quantity, said]) => ({
            itemId: `item_${code.toLowerCase()}`,
            quantity,
            note: said,
          })),
          note,
        }),
        savedBy: personId,
        // what was saved today was saved an hour ago
        savedAt: clock.minutesFromNow(-Math.max(daysAgo * DAY_MINUTES, 60)),
      })),
    );
  }
  await insertMany(
    write,
    caseOrigins,
    ORIGINS.map(({ reference, start, card, hoursAgo }) => ({
      caseId: `case_${reference.toLowerCase()}`,
      startId: start[0],
      startVersion: start[1],
      cardId: card?.[0] ?? null,
      cardVersion: card?.[1] ?? null,
      begunAt: clock.minutesFromNow(-hoursAgo * 60),
    })),
  );
}

/** Each start as it is now, whose version the database keeps by itself, and every version before it. */
async function insertStarts(write: Queries, clock: HospitalClock): Promise<void> {
  const at = (daysAgo: number) => clock.minutesFromNow(-daysAgo * DAY_MINUTES);
  for (const [index, { personId, name, construct, daysAgo, earlier = [] }] of SAVED_STARTS.entries()) {
    const id = `start_demo-${index + 1}`;
    const version = earlier.length + 1;
    await insertMany(write, planStarts, [
      { id, personId, name, body: construct, savedAt: at(daysAgo), version },
    ]);
    await insertMany(
      write,
      planStartVersions,
      earlier.map((one, before) => ({
        startId: id,
        version: before + 1,
        body: one.construct,
        savedBy: personId,
        savedAt: at(one.daysAgo),
      })),
    );
  }
}

/** Two calendar addresses whose secrets nobody was told: they are listed, and lead nowhere until another is made. */
export async function insertFeeds(write: Queries, clock: HospitalClock): Promise<void> {
  const feed = (id: string, personId: DemoPerson, kind: string, name: string, madeDaysAgo: number) => ({
    id,
    personId,
    kind,
    theatreId: null,
    name,
    tokenHash: hashCode(newToken()),
    madeAt: clock.minutesFromNow(-madeDaysAgo * DAY_MINUTES),
    lastReadAt: null,
  });
  await insertMany(write, calendarFeeds, [
    feed('feed_demo-1', 'person_wren-adeyemi', 'sterileServices', 'Screen at the pick bench', 12),
    feed('feed_demo-2', 'person_ines-halloran', 'theatre', 'Telephone', 40),
  ]);
}
