import { eq } from 'drizzle-orm';
import { failed, ok, type Problem, type Result } from '@/lib/identity/result';
import { type AcceptanceFinding, isAboutImplants } from '@/lib/loads/acceptance';
import type { ImplantException } from '@/lib/loads/load';
import { attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { loadWords as words } from '@/lib/wording/loads';
import type { Queries } from '../../client';
import type { LoadFacts } from '../../queries/loads/acceptanceFacts';
import type { Person } from '../../queries/people';
import { cases } from '../../schema';
import type { AskedException } from './accept-load';
import { reasonProblems } from './at-load';

interface Asked {
  exception: AskedException;
  lead: Person;
  facts: LoadFacts;
  findings: readonly AcceptanceFinding[];
  now: string;
}

/** Whether implants may go before the biological result: for one case, named packs, a reason, and two people for it. */
export async function exceptionProblems(write: Queries, asked: Asked): Promise<Result<ImplantException>> {
  const { exception, lead, facts, findings, now } = asked;
  const { surgeon, attestation } = exception;
  const problems: Problem[] = [];
  const say = (path: string, code: string, message: string) =>
    problems.push({ path: ['exception', path], code, message });
  if (!findings.some(isAboutImplants)) say('packIds', 'not-needed', words.noExceptionNeeded);
  const waiting = facts.packs.filter(
    ({ unloadedAs, implants }) => unloadedAs === 'sound' && implants !== 'no',
  );
  const named = waiting.filter(({ id }) => exception.packIds.some((one) => one === id));
  if (named.length === 0 || named.length !== new Set(exception.packIds).size)
    say('packIds', 'packs', words.exceptionPacks);
  for (const problem of reasonProblems(exception.reason, words.reasonNeeded))
    problems.push({ ...problem, path: ['exception', ...problem.path] });
  if (surgeon.id === lead.id) say('surgeon', 'same-person', words.samePerson);
  const [booked] = await write.select().from(cases).where(eq(cases.id, exception.caseId));
  if (!booked) say('caseId', 'unknown', words.noSuchCase);
  else {
    if (booked.endsAt <= now) say('caseId', 'case-over', words.caseOver(booked.reference));
    if (!may(surgeon, 'askForImplantsEarly') || booked.surgeonId !== surgeon.id)
      say('surgeon', 'not-operating', words.notOperating(surgeon.name, booked.reference));
  }
  if (!attests(attestation, surgeon.id, 'iApprove', now)) say('surgeon', 'not-proven', words.surgeonNeeded);
  if (problems.length > 0 || !booked) return failed(...problems);
  return ok({
    caseId: booked.id,
    caseReference: booked.reference,
    packIds: named.map(({ id }) => id),
    reason: exception.reason.trim(),
    lead: { id: lead.id, name: lead.name },
    surgeon: { id: surgeon.id, name: surgeon.name },
    at: now,
  });
}
