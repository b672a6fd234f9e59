import type { Problem } from '../identity/result';
import { isPastUseBy, type PlainDate } from '../quantities/plainDate';
import type { HeldBecause, TurnStep } from '../sets/setState';
import { sendWords as words } from '../wording/turns';

/** What decides whether a set may go to theatre for a case. */
export interface SendFacts {
  code: string;
  step: TurnStep;
  heldBecause: readonly HeldBecause[];
  /** The pack the set is in, if one is on record. */
  pack: {
    state: string;
    /** Whether the load it was sterilised in was accepted. */
    loadAccepted: boolean;
    useBy: PlainDate | null;
    /** The one case it may be used for, where it was let go short. */
    forCase: { id: string; reference: string } | null;
    /** When the decision that let it go short lapses or lapsed. */
    decisionLapsesAt: string | null;
  } | null;
  case: { id: string; reference: string; caseDate: PlainDate; endsAt: string; cancelled: boolean };
  /** Another case that the set is promised to and could not be back in time for. */
  promisedTo: { reference: string; startsAt: string } | null;
  /** Another case whose kit it lies with. */
  onKitOf: { reference: string } | null;
  sterility: 'useBy' | 'eventRelated';
  now: string;
}

/**
 * Everything that keeps a set from going to a case, at once. Use-by is tested against the case date, and only where
 * sterility ends by date; where it ends by events, a wet or torn wrap is a hold, and a held set does not go.
 */
export function sendProblems(facts: SendFacts): Problem[] {
  const { code, step, pack, now } = facts;
  const problems: Problem[] = [];
  const add = (why: string, message: string) => problems.push({ path: [], code: why, message });
  if (Date.parse(facts.case.endsAt) < Date.parse(now)) add('case-over', words.caseOver(facts.case.reference));
  if (facts.case.cancelled) add('case-cancelled', words.caseCancelled(facts.case.reference));
  if (facts.promisedTo)
    add('promised-to-another', words.promisedToAnother(code, facts.promisedTo, facts.case.reference, now));
  if (facts.onKitOf) add('on-other-kit', words.onOtherKit(code, facts.onKitOf.reference));
  if (step === 'held') add('held', words.heldStill(code, facts.heldBecause));
  else if (step !== 'inSterileStore') add('not-in-store', words.notInStore(code, step));
  if (pack === null) {
    if (step === 'inSterileStore') add('no-pack', words.noPack(code));
    return problems;
  }
  if (step === 'inSterileStore' && !(pack.state === 'sterile' && pack.loadAccepted))
    add('not-sterile', words.notSterile(code));
  const { caseDate, reference } = facts.case;
  if (facts.sterility === 'useBy' && pack.useBy !== null && isPastUseBy(pack.useBy, caseDate))
    add('past-use-by', words.pastUseBy(code, pack.useBy, reference, caseDate));
  if (pack.forCase !== null && pack.forCase.id !== facts.case.id)
    add('short-for-another', words.shortForAnother(code, reference, pack.forCase.reference));
  if (pack.decisionLapsesAt !== null && Date.parse(pack.decisionLapsesAt) <= Date.parse(now))
    add('decision-lapsed', words.decisionLapsed(code));
  return problems;
}
