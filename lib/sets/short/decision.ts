import { z } from 'zod';
import { caseId, decisionId, itemId, lineId, personId, setId, turnId } from '../../identity/ids';
import { mustHaveClass } from '../configuration';
import type { HeldLine } from '../holdings';
import type { ShortAsk } from './ask';
import { shortLinesOf } from './ask';
import { checkStandIns, type Pouch, standIn } from './standIns';

const shortLine = z.object({
  lineId,
  itemId,
  mustHaveClass,
  short: z.number().int().positive(),
  belowMinimum: z.number().int().min(0),
});

/** Who stood for it, as what, and how they proved who they are. */
const approval = z.object({
  as: z.enum(['technician', 'decontaminationLead', 'theatreLead', 'operatingSurgeon']),
  personId,
  name: z.string(),
  method: z.enum(['password', 'pin', 'badgeAndPin']),
  at: z.string(),
});
export type Approval = z.infer<typeof approval>;

/** That a short set may go: decided by whom, why, with what beside it, for which case, and until when. */
export const shortDecision = z.object({
  id: decisionId,
  setId,
  turnId,
  kind: z.enum(['backUps', 'withSubstitute', 'oneCase']),
  lines: z.array(shortLine),
  substitutes: z.array(standIn),
  reason: z.string(),
  caseId: caseId.nullable(),
  approvals: z.array(approval).min(1),
  decidedAt: z.string(),
  lapsesAt: z.string().nullable(),
  lapsedAt: z.string().nullable(),
});
export type ShortDecision = z.infer<typeof shortDecision>;

/** The case a decision names, as it is now; `null` where there is none any more. */
export interface NamedCase {
  id: string;
  reference: string;
  startsAt: string;
  endsAt: string;
  surgeonId: string;
}

/** Why a decision is not in force any more, for good. */
export type Lapse = 'ended' | 'caseOver' | 'caseGone' | 'anotherSurgeon';

/**
 * Everything that has ended a decision. It goes with its case: when that is over, gone, or another surgeon's, the
 * people who stood for it stood for something else. A case put off does not stretch it.
 */
export function lapsesOf(decision: ShortDecision, named: NamedCase | null, now: string): Lapse[] {
  const { lapsesAt, lapsedAt, kind, approvals } = decision;
  if (lapsedAt !== null) return ['ended'];
  const over = lapsesAt !== null && Date.parse(lapsesAt) <= Date.parse(now);
  if (kind !== 'oneCase') return over ? ['caseOver'] : [];
  if (named === null) return ['caseGone'];
  const surgeon = approvals.find((one) => one.as === 'operatingSurgeon');
  return [
    ...(over || Date.parse(named.endsAt) <= Date.parse(now) ? (['caseOver'] as const) : []),
    ...(surgeon?.personId !== named.surgeonId ? (['anotherSurgeon'] as const) : []),
  ];
}

/** Why a decision that has not lapsed still does not cover the set as it is now. */
export type NotCovered =
  | { kind: 'moreIsShort'; itemId: string }
  | { kind: 'standIns' }
  | { kind: 'approverLacking'; approver: Approval['as'] };

/**
 * What a decision leaves open against what is counted now: another must-have below its minimum, or more of it; a
 * stand-in that is gone, held or past use-by; a person who would have to stand for it and did not.
 */
export function notCovered(
  decision: ShortDecision,
  ask: ShortAsk,
  lines: readonly HeldLine[],
  pouches: readonly Pouch[],
): NotCovered[] {
  const decided = new Map(decision.lines.map((line) => [line.lineId, line]));
  const more = shortLinesOf(ask.findings)
    .filter((line) => line.belowMinimum > (decided.get(line.lineId)?.belowMinimum ?? 0))
    .map(({ itemId: item }): NotCovered => ({ kind: 'moreIsShort', itemId: item }));
  // stand-ins for what has been refilled meanwhile are no longer asked for
  const asked = new Set(ask.findings.flatMap((one) => (one.rule === 'classTwo' ? [one.lineId] : [])));
  const chosen = decision.substitutes.filter((one) => asked.has(one.lineId));
  const kept = chosen.filter((one, at) => {
    const finding = ask.findings.find((line) => line.rule === 'classTwo' && line.lineId === one.lineId);
    const before = chosen.slice(0, at).filter((other) => other.lineId === one.lineId).length;
    return finding?.rule === 'classTwo' && before < finding.missing;
  });
  const standIns = checkStandIns(kept, lines, pouches, (id) => id);
  const stood = new Set(decision.approvals.map((one) => one.as));
  const lacking = ask.approvers
    .filter((approver) => approver !== 'technician' && !stood.has(approver))
    .map((approver): NotCovered => ({ kind: 'approverLacking', approver }));
  return [...more, ...(standIns.length > 0 ? [{ kind: 'standIns' } as const] : []), ...lacking];
}

/** Why a set may not serve a case: it was sent short for another one, or what let it go has lapsed. */
export type NotForCase = { kind: 'otherCase'; reference: string } | { kind: 'lapsed'; because: Lapse };

/** A set that goes for one case goes to no other, and to none once that has passed. */
export function whyNotForCase(
  decision: ShortDecision,
  named: NamedCase | null,
  forCase: string | null,
  now: string,
): NotForCase | null {
  if (decision.kind !== 'oneCase') return null;
  const [because] = lapsesOf(decision, named, now);
  if (because) return { kind: 'lapsed', because };
  if (forCase !== decision.caseId) return { kind: 'otherCase', reference: named?.reference ?? '' };
  return null;
}
