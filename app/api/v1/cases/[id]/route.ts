import { now } from '@/app/_server/clock';
import { oneOf } from '@/app/api/v1/_reading/one';
import { originOfCase } from '@/db/queries/cards/cards';
import { findCase, listPlanVersions } from '@/db/queries/cases';
import { isEmergency } from '@/db/queries/emergency/record';
import { loansForCase } from '@/db/queries/loans/loanBoard';
import { shortForCase } from '@/db/queries/short/shortForCase';
import { promisedTo } from '@/db/queries/theatre/theatreDay';

/** One case: when and where it is, the versions of its plan, the sets promised to it, and its loans. */
export const GET = oneOf('GET /api/v1/cases/[id]', { what: 'case' }, async ({ db, params }) => {
  const booked = await findCase(db, params.id);
  if (booked === null) return null;
  const [origin, isTaken, versions, promised, loans, short] = await Promise.all([
    originOfCase(db, booked.id),
    isEmergency(db, booked.id),
    listPlanVersions(db, booked.id),
    promisedTo(db, [booked.id]),
    loansForCase(db, booked.id, now()),
    shortForCase(db, booked.id, now()),
  ]);
  return {
    ...booked,
    isEmergency: isTaken,
    origin,
    plans: versions.map(({ id, version, status }) => ({ id, version, status })),
    promised: promised.get(booked.id) ?? [],
    loans,
    short,
  };
});
