import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Attestation, attests } from '@/lib/people/attestation';
import { loadWords as words } from '@/lib/wording/loads';
import { atLoad, type LoadNow, type LoadRequest, reasonProblems } from './at-load';
import { failLoad } from './fail-load';

interface RejectLoad extends LoadRequest {
  reason: string;
  /** Sets of a load that was not accepted yet go back to the bench, or are held. One accepted before is always held. */
  setsGo: 'onBench' | 'held';
  /** That this person proved who they are and said `iRejectThisLoad`. */
  attestation: Attestation;
}

/** Rejects a load, or one that was accepted before; everything in doubt by it is held in the same write. */
export async function rejectLoad(
  request: RejectLoad,
): Promise<Outcome<{ revision: number; held: number }, LoadNow>> {
  const { person, now, newId, attestation, setsGo } = request;
  const acting = { act: 'rejectLoad', verb: 'reject it', while: ['awaitingAcceptance', 'accepted'] } as const;
  if (!attests(attestation, person.id, 'iRejectThisLoad', now))
    return refused('notPermitted', words.proveFirst);
  return atLoad(request, acting, async (write, load) => {
    const problems = reasonProblems(request.reason, words.reasonNeeded);
    if (problems.length > 0) return refusedFor(problems);
    const { meaning, method, at } = attestation;
    const value = await failLoad(write, {
      load,
      setsGo,
      reason: request.reason.trim(),
      person,
      now,
      newId,
      detail: { setsGo, before: load.state, attested: { meaning, method, at } },
    });
    return { ok: true, value };
  });
}
