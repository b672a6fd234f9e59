import 'server-only';
import type { Database } from '@/db/client';
import { keepPlan, type PlanKept } from '@/db/operations/theatre/keep-plan';
import type { Person } from '@/db/queries/people';
import { roundTimes } from '@/db/queries/turns/roundTimes';
import type { CaseId, SetId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { setsByCase } from '@/lib/theatre/planning/setsByCase';
import { theatreListWords as words } from '@/lib/wording/theatre-list';
import { newId, now } from './clock';
import type { PlannedList } from './list-planner';

/** A plan somebody looks at before it is kept. */
interface Proposal {
  personId: string;
  plan: ReadonlyMap<CaseId, readonly SetId[]>;
  madeFrom: ReadonlySet<string>;
  seenAt: ReadonlyMap<string, { startsAt: string; endsAt: string }>;
}

/** So many are remembered; the oldest go first, and whoever keeps one of those makes it anew. */
const MOST_KEPT = 40;

const kept = globalThis as typeof globalThis & { kitwrightProposals?: Map<string, Proposal> };

/** Remembers a plan under an id of its own, for the person who asked for it. */
export function remember({ facts, answer }: PlannedList, person: Person): string {
  kept.kitwrightProposals ??= new Map();
  const all = kept.kitwrightProposals;
  const id = newId('request');
  all.set(id, {
    personId: person.id,
    plan: setsByCase(facts, answer),
    madeFrom: new Set(facts.promises.map((promise) => promise.id)),
    seenAt: new Map(facts.cases.map((one) => [one.id, { startsAt: one.startsAt, endsAt: one.endsAt }])),
  });
  for (const oldest of all.keys()) {
    if (all.size <= MOST_KEPT) break;
    all.delete(oldest);
  }
  return id;
}

/** Keeps the very plan that was looked at, or says that promises changed since. */
export async function keepProposal(
  db: Database,
  person: Person,
  id: string,
): Promise<Outcome<PlanKept, never>> {
  const proposal = kept.kitwrightProposals?.get(id);
  if (proposal === undefined || proposal.personId !== person.id)
    return refused('conflict', words.planForgotten);
  const outcome = await keepPlan({
    db,
    now: now(),
    newId,
    person,
    plan: proposal.plan,
    madeFrom: proposal.madeFrom,
    seenAt: proposal.seenAt,
    round: await roundTimes(db),
  });
  if (outcome.ok) kept.kitwrightProposals?.delete(id);
  return outcome.ok || outcome.refusal.because !== 'conflict'
    ? outcome
    : refused('conflict', words.proposalOvertaken);
}
