import { endpoint } from '@/app/_server/enter';
import { jsonLines, seldom } from '@/app/_server/json-lines';
import { remember } from '@/app/_server/plan-proposals';
import { planList } from '@/app/_server/theatre-planning';
import { proposedChanges } from '@/lib/theatre/planning/proposedChanges';
import { setsByCase } from '@/lib/theatre/planning/setsByCase';

/**
 * Works out who would get which set over the horizon, and writes nothing. A line of JSON at a time: `{ done, of, label }`
 * while it works, then `{ proposal }` with what keeping it would change. Whoever stops listening ends it.
 */
export const POST = endpoint(
  'POST /api/v1/theatre-list/proposals',
  { answers: 'stream' },
  ({ db, person, request }) =>
    jsonLines(
      async (say) => {
        const { signal } = request;
        try {
          const planned = await planList(db, [], { onProgress: seldom(say), signal });
          const { facts, answer } = planned;
          say({
            proposal: {
              id: remember(planned, person),
              changes: proposedChanges(facts, setsByCase(facts, answer)),
              served: answer?.served ?? 0,
              of: answer?.of ?? 0,
              unserved: answer?.unserved.map((one) => one.case) ?? [],
              proven: answer === null || answer.proof.kind === 'optimal',
              more: answer?.earliestFree.more ?? 0,
            },
          });
        } catch (fault) {
          // nobody listens any more
          if (!signal.aborted) throw fault;
        }
      },
      { problem: 'It could not be planned to the end; nothing was changed.' },
    ),
);
