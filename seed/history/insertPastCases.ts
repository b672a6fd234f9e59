import type { Queries } from '@/db/client';
import { localDate } from '../hospitalClock';
import type { History } from './history';
import { insertRows } from './insertRows';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const iso = (ms: number) => new Date(ms).toISOString();

/** Cases that are over, with the plan each was confirmed by. */
export async function insertPastCases(write: Queries, { cases }: History): Promise<void> {
  await insertRows(
    write,
    'cases',
    [
      'id',
      'reference',
      'theatre_id',
      'case_date',
      'starts_at',
      'ends_at',
      'region',
      'limb',
      'surgeon_id',
      'urgency',
      'revision',
    ],
    cases.map((one) => [
      one.id,
      one.reference,
      one.theatre,
      localDate(new Date(one.startsAt)),
      iso(one.startsAt),
      iso(one.endsAt),
      one.construct.region,
      one.limb,
      one.surgeon,
      one.urgency,
      1,
    ]),
  );
  await insertRows(
    write,
    'plans',
    [
      'id',
      'case_id',
      'version',
      'status',
      'body',
      'written_by',
      'written_at',
      'confirmed_by',
      'confirmed_at',
      'revision',
    ],
    cases.map((one) => {
      const written = one.startsAt - (one.urgency === 'booked' ? 30 : 3) * HOUR;
      return [
        `plan_${one.id.slice('case_'.length)}-1`,
        one.id,
        1,
        'confirmed',
        JSON.stringify(one.construct),
        one.surgeon,
        iso(written),
        one.surgeon,
        iso(written + 10 * MINUTE),
        1,
      ];
    }),
  );
}
