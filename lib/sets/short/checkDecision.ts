import type { PersonId } from '../../identity/ids';
import type { Problem } from '../../identity/result';
import { type Attestation, attests } from '../../people/attestation';
import { type Act, may } from '../../people/permissions';
import type { Role } from '../../people/role';
import { textProblems } from '../../plans/checkConstruct';
import { shortWords as words } from '../../wording/short';
import type { Approver, ShortAsk } from './ask';
import type { NamedCase } from './decision';

/** One person who stands for sending a set short. */
export interface Approving {
  as: Approver;
  attestation: Attestation;
  /** Whom the attestation names; `null` where there is nobody of that id, or they have left. */
  person: { id: PersonId; name: string; role: Role } | null;
}

interface Decided {
  ask: ShortAsk;
  reason: string;
  approvals: readonly Approving[];
  /** Whether a case was named, and what it is; `null` where there is none of that id. */
  caseNamed: boolean;
  named: NamedCase | null;
  /** Name of the person who operates on the named case. */
  surgeonName: string | null;
  now: string;
}

export const ACT_OF_APPROVER: Record<Approver, Act> = {
  technician: 'packSet',
  decontaminationLead: 'sendWithSubstitute',
  theatreLead: 'sendShortAsTheatreLead',
  operatingSurgeon: 'sendShortAsSurgeon',
};

const MOST_CHARACTERS = 400;

/** Everything that keeps a decision from being taken, apart from the stand-ins. All problems at once. */
export function checkDecision(decided: Decided): Problem[] {
  return [...checkReason(decided.reason), ...checkCase(decided), ...checkApprovals(decided)];
}

/** A reason: there, not too long, and nothing about a patient in it. */
export function checkReason(reason: string): Problem[] {
  if (reason.trim() === '') return [problem(['reason'], 'needed', words.reasonNeeded)];
  if (reason.length > MOST_CHARACTERS) return [problem(['reason'], 'too-long', words.reasonLong)];
  return textProblems(reason, ['reason']);
}

function checkCase({ ask, caseNamed, named, now }: Decided): Problem[] {
  if (!ask.oneCase) return caseNamed ? [problem(['caseId'], 'no-case', words.noCaseHere)] : [];
  if (!caseNamed) return [problem(['caseId'], 'needed', words.caseNeeded)];
  if (named === null) return [problem(['caseId'], 'unknown-case', words.noSuchCase)];
  return Date.parse(named.endsAt) <= Date.parse(now)
    ? [problem(['caseId'], 'case-over', words.caseOver(named.reference))]
    : [];
}

function checkApprovals({ ask, approvals, named, surgeonName, now }: Decided): Problem[] {
  const missing = ask.approvers
    .filter((approver) => !approvals.some((one) => one.as === approver))
    .map((approver) => problem(['approvals'], 'approver-needed', words.approverNeeded(approver)));
  const wrong = approvals.flatMap(({ as, attestation, person }, at): Problem[] => {
    const path = ['approvals', at];
    if (!ask.approvers.includes(as)) return [problem(path, 'approver-not-asked', words.approverNotAsked(as))];
    const found: Problem[] = [];
    const before = approvals.slice(0, at);
    if (before.some((one) => one.as === as))
      found.push(problem(path, 'approver-twice', words.approverTwice(as)));
    if (before.some((one) => one.attestation.personId === attestation.personId))
      found.push(problem(path, 'same-person', words.samePerson));
    if (person === null || !may(person, ACT_OF_APPROVER[as]))
      found.push(problem(path, 'wrong-role', words.notTheRole(person?.name ?? 'This person', as)));
    if (person !== null && !attests(attestation, person.id, 'iSendItShort', now))
      found.push(problem(path, 'not-proven', words.notProven(person.name)));
    if (as === 'operatingSurgeon' && person !== null && named !== null && named.surgeonId !== person.id)
      found.push(
        problem(
          path,
          'not-the-surgeon',
          words.notTheSurgeon(person.name, named.reference, surgeonName ?? 'another surgeon'),
        ),
      );
    return found;
  });
  return [...missing, ...wrong];
}

const problem = (path: (string | number)[], code: string, message: string): Problem => ({
  path,
  code,
  message,
});
