import 'server-only';
import type { Database } from '@/db/client';
import type { CaseId } from '@/lib/identity/ids';
import { standings } from '@/lib/theatre/planning/standing';
import { caseStandingWords, STANDING_GROUPS, type StandingWords } from '@/lib/wording/case-standing';
import { namesOfPieces } from './names-of-pieces';
import { factsToTell, plannedList } from './theatre-planning';

/** How a case stands, and what it is counted with. */
interface CountedStanding extends StandingWords {
  /** The same for all that stand alike. */
  group: string;
}

/** How each case of the horizon stands by the plan of who gets which set, in a word and a sentence; as of `at`. */
export async function plannedStandings(
  db: Database,
): Promise<{ at: string; standings: Map<CaseId, CountedStanding> }> {
  const { facts: all, answer } = await plannedList(db);
  const [facts, called] = await Promise.all([factsToTell(db, all), namesOfPieces(db)]);
  const confirmed = new Map(facts.cases.map((one) => [one.id, one.confirmed]));
  return {
    at: facts.now,
    standings: new Map(
      [...standings(facts, answer)].map(([id, standing]) => {
        const said = caseStandingWords(standing, {
          now: facts.now,
          confirmed: confirmed.get(id as CaseId) ?? false,
          ...called,
        });
        // a draft is never called ready, and so not counted as ready
        const draft = said.tone !== 'good' && (standing.kind === 'ready' || standing.kind === 'readyWith');
        return [id as CaseId, { ...said, group: draft ? said.word : STANDING_GROUPS[standing.kind] }];
      }),
    ),
  };
}
