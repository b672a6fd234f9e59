import 'server-only';
import type { Database } from '@/db/client';
import type { CaseId } from '@/lib/identity/ids';
import { standings } from '@/lib/theatre/planning/standing';
import { caseStandingWords, type StandingWords } from '@/lib/wording/case-standing';
import { namesOfPieces } from './names-of-pieces';
import { plannedList } from './theatre-planning';

/** How each case of the horizon stands by the plan of who gets which set, in a word and a sentence; as of `at`. */
export async function plannedStandings(
  db: Database,
): Promise<{ at: string; standings: Map<CaseId, StandingWords> }> {
  const { facts, answer } = await plannedList(db);
  const called = await namesOfPieces(db);
  const confirmed = new Map(facts.cases.map((one) => [one.id, one.confirmed]));
  return {
    at: facts.now,
    standings: new Map(
      [...standings(facts, answer)].map(([id, standing]) => [
        id as CaseId,
        caseStandingWords(standing, {
          now: facts.now,
          confirmed: confirmed.get(id as CaseId) ?? false,
          ...called,
        }),
      ]),
    ),
  };
}
