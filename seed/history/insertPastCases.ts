import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { cases as caseTable, plans } from '@/db/schema';
import { localDate } from '../hospitalClock';
import type { History } from './history';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const iso = (ms: number) => new Date(ms).toISOString();

/** Cases that are over, with the plan each was confirmed by. */
export async function insertPastCases(write: Queries, { cases }: History): Promise<void> {
  await insertMany(
    write,
    caseTable,
    cases.map((one) => ({
      id: one.id,
      reference: one.reference,
      theatreId: one.theatre,
      caseDate: localDate(new Date(one.startsAt)),
      startsAt: iso(one.startsAt),
      endsAt: iso(one.endsAt),
      region: one.construct.region,
      limb: one.limb,
      surgeonId: one.surgeon,
      urgency: one.urgency,
      revision: 1,
    })),
  );
  await insertMany(
    write,
    plans,
    cases.map((one) => {
      const written = one.startsAt - (one.urgency === 'booked' ? 30 : 3) * HOUR;
      return {
        id: `plan_${one.id.slice('case_'.length)}-1`,
        caseId: one.id,
        version: 1,
        status: 'confirmed',
        body: one.construct,
        writtenBy: one.surgeon,
        writtenAt: iso(written),
        confirmedBy: one.surgeon,
        confirmedAt: iso(written + 10 * MINUTE),
        revision: 1,
      };
    }),
  );
}
