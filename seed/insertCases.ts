import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { cases, plans, setPromises } from '@/db/schema';
import { parseSetting } from '@/lib/settings/local';
import { promiseTimes } from '@/lib/theatre/promise';
import { caseReference } from '@/lib/theatre/surgicalCase';
import type { CasePlan } from './cases/casePlan';
import { CASES } from './cases/cases';
import { type HospitalClock, localDate } from './hospitalClock';
import { setIdOf } from './insertSets';

const CONFIRMED_AFTER_MINUTES = 10;
/** As the hospital's settings say until somebody changes them. */
const { leadMinutes: LEAD_MINUTES, longPercent: _, ...STAGE_MINUTES } = parseSetting('stages', null);
const ROUND_MINUTES = Object.values(STAGE_MINUTES).reduce((sum, minutes) => sum + minutes, 0);
const PROMISED_BEFORE_MINUTES = 12 * 60;

/** Cases with their plans and promised sets. */
export async function insertCases(write: Queries, clock: HospitalClock): Promise<void> {
  for (const plan of CASES) await insertCase(write, plan, clock);
}

async function insertCase(write: Queries, plan: CasePlan, clock: HospitalClock): Promise<void> {
  const stem = plan.reference.toLowerCase();
  const caseId = `case_${stem}`;
  const { startsAt, endsAt } = timesOf(plan, clock);
  await insertMany(write, cases, [
    {
      id: caseId,
      reference: caseReference.parse(plan.reference),
      theatreId: plan.theatre,
      caseDate: localDate(new Date(startsAt)),
      startsAt,
      endsAt,
      region: plan.region,
      limb: plan.limb,
      surgeonId: plan.surgeon,
      urgency: plan.urgency,
      revision: 1,
    },
  ]);
  await insertMany(
    write,
    plans,
    plan.plans.map((version, index) => {
      const draft = version.status === 'draft';
      return {
        id: `plan_${stem}-${index + 1}`,
        caseId,
        version: index + 1,
        status: version.status,
        body: version.construct,
        writtenBy: version.writtenBy ?? plan.surgeon,
        writtenAt: clock.minutesFromNow(-version.hoursAgo * 60),
        confirmedBy: draft ? null : plan.surgeon,
        confirmedAt: draft ? null : clock.minutesFromNow(-version.hoursAgo * 60 + CONFIRMED_AFTER_MINUTES),
        revision: 1,
      };
    }),
  );
  await insertMany(
    write,
    setPromises,
    (plan.promised ?? []).map((code) => ({
      id: `promise_${stem}-${code.toLowerCase()}`,
      setId: setIdOf(code),
      caseId,
      ...promiseTimes({ startsAt, endsAt }, LEAD_MINUTES, ROUND_MINUTES),
      chosenBy: 'person',
      promisedBy: plan.surgeon,
      promisedAt: clock.minutesFromNow(-PROMISED_BEFORE_MINUTES),
    })),
  );
}

function timesOf({ when }: CasePlan, clock: HospitalClock): { startsAt: string; endsAt: string } {
  if ('inMinutes' in when) {
    return {
      startsAt: clock.minutesFromNow(when.inMinutes),
      endsAt: clock.minutesFromNow(when.inMinutes + when.lasting),
    };
  }
  return { startsAt: clock.at(when.days, when.from), endsAt: clock.at(when.days, when.to) };
}
