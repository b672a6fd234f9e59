import { and, eq } from 'drizzle-orm';
import type { PlanId } from '@/lib/identity/ids';
import { may } from '@/lib/people/permissions';
import { assessPlan, stopsOf } from '@/lib/plans/assess';
import { planCatalogueOf } from '@/lib/plans/planCatalogue';
import type { PlanFinding } from '@/lib/plans/planFinding';
import type { PlanVersion } from '@/lib/plans/planVersion';
import { type PlanOutcome, refused, refusedFor } from '@/lib/plans/refusal';
import { caseRegion, limb } from '@/lib/theatre/surgicalCase';
import { placeWords, planFindingSentence } from '@/lib/wording/planFindings';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import { planFromRow } from '../mappers/plan';
import { loadCatalogue } from '../queries/catalogue';
import { loadFitEngine } from '../queries/fitRules';
import type { Person } from '../queries/people';
import { THE_PROGRAM } from '../reader';
import { cases, plans } from '../schema';

interface ConfirmPlan {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  planId: PlanId;
  /** The revision the surgeon looked at; another is not what is confirmed. */
  revision: number;
}

/**
 * Confirms a draft: it is frozen from here on and supersedes the version before it. A plan with a stop is refused,
 * with every stop named; what is not established does not bar it, and stays shown as not established.
 */
export async function confirmPlan(request: ConfirmPlan): Promise<PlanOutcome<PlanVersion>> {
  const { db, now, person, planId, revision } = request;
  if (!may(person, 'confirmPlan')) {
    return refused(
      'notPermitted',
      `Only a surgeon confirms a plan, and ${person.name} is entered as another.`,
    );
  }
  return db.tx(async (write) => {
    const [row] = await write.select().from(plans).where(eq(plans.id, planId));
    if (!row) return refused('notFound', 'There is no such plan; the draft may have been discarded.');
    const current = planFromRow(row);
    if (current.status !== 'draft') return refused('frozen', 'This version is confirmed already.', current);
    if (current.revision !== revision) {
      return refused(
        'conflict',
        'The draft was changed after you looked at it: look again before you confirm.',
        current,
      );
    }
    const [booked] = await write.select().from(cases).where(eq(cases.id, current.caseId));
    if (!booked) throw new Error(`plan ${planId} has no case`);
    const read = { read: write, reader: THE_PROGRAM } as const;
    const findings = assessPlan(
      current.construct,
      planCatalogueOf(await loadCatalogue(read)),
      await loadFitEngine(read),
      { limb: limb.parse(booked.limb), region: caseRegion.parse(booked.region) },
    );
    const barred = [...stopsOf(findings), ...findings.filter(({ code }) => code === 'nothing-planned')];
    if (barred.length > 0) return refusedFor(barred.map(problemOf));

    await write
      .update(plans)
      .set({ status: 'superseded' })
      .where(and(eq(plans.caseId, current.caseId), eq(plans.status, 'confirmed')));
    const [confirmed] = await write
      .update(plans)
      .set({ status: 'confirmed', confirmedBy: person.id, confirmedAt: now, revision: revision + 1 })
      .where(and(eq(plans.id, planId), eq(plans.revision, revision), eq(plans.status, 'draft')))
      .returning();
    if (!confirmed) throw new Error('the draft changed inside its own transaction');
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'confirm-plan',
      subjectKind: 'plan',
      subjectId: planId,
      detail: {
        caseId: current.caseId,
        version: current.version,
        notEstablished: notEstablishedIn(findings),
      },
    });
    return { ok: true, value: planFromRow(confirmed) };
  });
}

/** What was not established when it was confirmed, so that the ledger says what the surgeon was shown. */
function notEstablishedIn(findings: PlanFinding[]): string[] {
  return findings
    .filter(({ group }) => group === 'notEstablished')
    .map((finding) => `${placeWords(finding.at)}: ${finding.code}`);
}

function problemOf(finding: PlanFinding) {
  const place = placeWords(finding.at);
  const message = `${place.charAt(0).toUpperCase()}${place.slice(1)}: ${planFindingSentence(finding)}`;
  return { path: finding.path, code: finding.code, message };
}
