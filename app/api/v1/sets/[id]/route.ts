import { now } from '@/app/_server/clock';
import { oneOf } from '@/app/api/v1/_reading/one';
import { loanOfSet } from '@/db/queries/loans/loanOfSet';
import { loadSetStanding } from '@/db/queries/setStandings';
import { openQuestionsOf } from '@/db/queries/theatreCounts/questions';
import { asidePiecesOf } from '@/db/queries/turns/asidePieces';
import { loadSetTurn } from '@/db/queries/turns/setTurn';

/** One set: its slots and what lies in them, how it stands, its turn, and what is open about it. */
export const GET = oneOf('GET /api/v1/sets/[id]', { what: 'set' }, async ({ db, params }) => {
  const found = await loadSetStanding(db, params.id, now());
  if (!found) return null;
  const { set, standing, newer } = found;
  const [turn, aside, questions, loan] = await Promise.all([
    loadSetTurn(db, set.id),
    asidePiecesOf(db, { settled: false, of: set.id, limit: 500 }),
    openQuestionsOf(db, [set.id]),
    set.owner === 'loan' ? loanOfSet(db, set.id) : null,
  ]);
  return { ...set, standing, newer, turn, aside, questions, loan };
});
