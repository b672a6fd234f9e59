import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
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

/** Progress is told no more often than this. */
const TELL_EVERY_MS = 150;

/**
 * Tries a change against the whole catalogue and all plans, and keeps what it shows. The answer is a line of JSON at a time:
 * `{ done, of, label }` while it works, then `{ trialId }` or `{ problem }`. Others have their turn between two plans.
 */
export const POST = endpoint('POST /api/changes/trials', async ({ db, person, request }) => {
  const read = await readBody(request, body);
  if (!read.ok) return read.response;
  const subject = read.value;
  const at = now();
  const tried = await begun(db, subject, at, wallClock(at).date);
  if (!tried) return noSuch('change to try');
  const { steps, ...digests } = tried;
  const encoder = new TextEncoder();
  const stream = new ReadableStream<Uint8Array>({
    async start(controller) {
      const say = (line: unknown) => controller.enqueue(encoder.encode(`${JSON.stringify(line)}\n`));
      try {
        const result = await drive(steps, say, request.signal);
        if (result) {
          const kept = await recordTrial({ db, now: now(), newId, person, subject, ...digests, result });
          say(kept.ok ? { trialId: kept.value.id } : { problem: kept.refusal.problems[0]?.message });
        }
      } catch (fault) {
        say({ problem: 'It could not be tried to the end; nothing was kept.' });
        controller.close();
        throw fault;
      }
      controller.close();
    },
  });
  return new Response(stream, {
    headers: { 'Content-Type': 'application/x-ndjson; charset=utf-8', 'Cache-Control': 'no-store' },
  });
});

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
async function drive(steps: Steps, say: (line: unknown) => void, signal: AbortSignal): Promise<Trial | null> {
  let told = 0;
  for (;;) {
    const step = await steps.next();
    if (step.done) return step.value;
    if (signal.aborted) return null;
    if (Date.now() - told >= TELL_EVERY_MS) {
      told = Date.now();
      say(step.value);
    }
    await new Promise((resolve) => setImmediate(resolve));
  }
}
