import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonLines, type Say, seldom } from '@/app/_server/json-lines';
import { noSuch, readBody } from '@/app/_server/outcome-answer';
import { highsSolver } from '@/app/_server/solver/highs';
import { recordTrial } from '@/db/operations/changes/record-trial';
import { loadConfigurationChange, tryConfigurationChange } from '@/db/queries/changes/configurationTrial';
import { loadFitChange, tryFitChange } from '@/db/queries/changes/fitTrial';
import type { TrialSubject } from '@/db/queries/changes/trials';
import type { Reading } from '@/db/reader';
import type { Trial } from '@/lib/changes/trial';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';

const body = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.enum(['fit-rule', 'fit-exception']),
    id: z.string().max(80),
    change: z.enum(['putInForce', 'withdraw']),
  }),
  z.strictObject({
    kind: z.literal('configuration-version'),
    id: z.string().max(80),
    change: z.literal('putInForce'),
  }),
]);

/**
 * Tries a change against the whole catalogue and all plans, and keeps what it shows. The answer is a line of JSON at a time:
 * `{ done, of, label }` while it works, then `{ trialId }` or `{ problem }`. Others have their turn between two plans.
 */
export const POST = endpoint(
  'POST /api/v1/changes/trials',
  { answers: 'stream', body: body },
  async ({ db, person, request }) => {
    const read = await readBody(request, body);
    if (!read.ok) return read.response;
    const subject = read.value;
    const at = now();
    const tried = await begun(db, subject, at, wallClock(at).date);
    if (!tried) return noSuch('change to try');
    const { steps, ...digests } = tried;
    return jsonLines(
      async (say) => {
        const result = await drive(steps, seldom(say), request.signal);
        if (!result) return;
        const kept = await recordTrial({ db, now: now(), newId, person, subject, ...digests, result });
        say(kept.ok ? { trialId: kept.value.id } : { problem: kept.refusal.problems[0]?.message });
      },
      { problem: 'It could not be tried to the end; nothing was kept.' },
    );
  },
);

type Steps = AsyncGenerator<{ done: number; of: number; label: string }, Trial>;

async function begun(
  db: Reading,
  subject: z.infer<typeof body>,
  at: string,
  today: PlainDate,
): Promise<{ steps: Steps; contentDigest: string; basisDigest: string } | null> {
  const given = { now: at, today, solver: highsSolver };
  if (subject.kind === 'configuration-version') {
    const change = await loadConfigurationChange(db, subject.id, today);
    if (!change) return null;
    const { contentDigest, basisDigest } = change;
    return { steps: tryConfigurationChange(db, change, given), contentDigest, basisDigest };
  }
  const change = await loadFitChange(db, subject satisfies TrialSubject, today);
  if (!change) return null;
  const { contentDigest, basisDigest } = change;
  return { steps: tryFitChange(db, change, given), contentDigest, basisDigest };
}

/** Drives a trial to its end, with a turn for everybody else after each step; `null` when nobody waits for it any more. */
async function drive(steps: Steps, say: Say, signal: AbortSignal): Promise<Trial | null> {
  for (;;) {
    const step = await steps.next();
    if (step.done) return step.value;
    if (signal.aborted) return null;
    say(step.value);
    await new Promise((resolve) => setImmediate(resolve));
  }
}
