import { factsToTell, plannedList } from '@/app/_server/theatre-planning';
import { oneOf } from '@/app/api/v1/_reading/one';
import { riskLines } from '@/lib/theatre/planning/risk';

/** Cases that cannot go as they stand, or may not, as the plan has them now. */
export const GET = oneOf('GET /api/v1/reports/at-risk', { what: 'report' }, async ({ db }) => {
  const { facts, answer } = await plannedList(db);
  const told = await factsToTell(db, facts);
  return { at: told.now, cases: riskLines(told, answer) };
});
