import type { loanSteps, loans, loanTrays } from '@/db/schema';
import { dueOf, neededAt, noticeTerms } from '@/lib/loans/due';
import { type LoanState, loanState } from '@/lib/loans/states';
import { parseSetting } from '@/lib/settings/local';
import { configurationIdOf } from '../configurations/layout';
import { PEOPLE } from '../hospital/people';
import type { HospitalClock } from '../hospitalClock';
import { setIdOf } from '../insertSets';
import { LENDERS, type LoanPlan } from './loanPlan';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
/** States a loan passed before it came to the one it is in. */
const WAY: readonly LoanState[] = ['asked', 'confirmed', 'here', 'inService', 'goingBack', 'goneBack'];

/** A loan of the demo with the moments that matter, as instants. */
export interface Dated {
  plan: LoanPlan;
  id: string;
  caseId: string | null;
  askedAt: string;
  dueAt: string | null;
  arrivedAt: string | null;
}

export function datedOf(
  plan: LoanPlan,
  clock: HospitalClock,
  booked: ReadonlyMap<string, { id: string; startsAt: string }>,
): Dated {
  const now = clock.now.getTime();
  const own = 'caseReference' in plan.for ? booked.get(plan.for.caseReference) : undefined;
  if ('caseReference' in plan.for && !own) throw new Error(`${plan.number} is for a case that is not there`);
  const setting = parseSetting('loans', undefined);
  const fromDate = 'from' in plan.for ? clock.date(plan.for.from) : null;
  const needed = neededAt({ fromDate }, own ?? null, setting);
  const dueAt = needed === null ? null : dueOf(needed, noticeTerms(setting));
  return {
    plan,
    id: `loan_demo-${plan.number.slice(3)}`,
    caseId: own?.id ?? null,
    askedAt: iso(now - plan.askedHours * HOUR),
    dueAt,
    arrivedAt: plan.arrived ? arrivalOf(plan, dueAt, now) : null,
  };
}

/** Loans gone back came so many hours after they were due; those that are here came so many hours ago. */
function arrivalOf({ state, arrived, number }: LoanPlan, dueAt: string | null, now: number): string {
  if (!arrived || dueAt === null) throw new Error(`${number} has no due time`);
  return iso(state === 'goneBack' ? Date.parse(dueAt) + arrived.hours * HOUR : now - arrived.hours * HOUR);
}

export function loanRow(dated: Dated, clock: HospitalClock): typeof loans.$inferInsert {
  const { plan, id, caseId, askedAt, dueAt, arrivedAt } = dated;
  const answered = plan.state !== 'asked';
  const contact = LENDERS.find(({ id: lender }) => lender === plan.lender)?.contact ?? null;
  const collectedAt =
    plan.collectedHours === undefined ? null : iso(clock.now.getTime() - plan.collectedHours * HOUR);
  return {
    id,
    number: plan.number,
    lenderId: plan.lender,
    state: plan.state,
    caseId,
    fromDate: 'from' in plan.for ? clock.date(plan.for.from) : null,
    untilDate: 'from' in plan.for ? clock.date(plan.for.until) : null,
    askedFor: plan.askedFor,
    configurationId: configurationIdOf(plan.configuration),
    askedBy: plan.askedBy,
    askedAt,
    answeredBy: answered ? contact : null,
    answeredAt: answered ? iso(Date.parse(askedAt) + 2 * HOUR) : null,
    expectedAt: answered ? dueAt : null,
    backBy: plan.backByDays === null ? null : clock.date(plan.backByDays),
    dueAt: arrivedAt === null ? null : dueAt,
    dueRule: arrivedAt === null ? null : noticeTerms(parseSetting('loans', undefined)),
    arrivedAt,
    broughtBy: arrivedAt === null ? null : 'the lender’s driver',
    traysArrived: arrivedAt === null ? null : 1,
    placeId: plan.arrived?.set ? 'place_loan-bay' : null,
    declaration: plan.papers?.declaration ?? (collectedAt === null ? null : 'present'),
    instructions: plan.papers?.instructions ?? (collectedAt === null ? null : 'present'),
    papersBy: plan.papers || collectedAt !== null ? 'person_dilys-harrow' : null,
    papersAt: arrivedAt === null ? null : later(arrivedAt, 10),
    unpackedAt:
      plan.state === 'inService' || plan.state === 'goneBack' ? arrivedAt && later(arrivedAt, 60) : null,
    ourDeclaration:
      collectedAt === null
        ? null
        : {
            ...proven('person_wren-adeyemi', later(collectedAt, -60)),
            trays: [{ tray: 1, how: 'decontaminated' }],
          },
    collectedBy: collectedAt === null ? null : 'Percival Undrell',
    collectedAt,
    handedOver: collectedAt === null ? null : proven('person_dilys-harrow', collectedAt),
    revision: 3,
  };
}

const proven = (by: string, at: string) => ({
  by,
  name: PEOPLE.find(({ id }) => id === by)?.name ?? by,
  at,
  method: 'pin',
});

export function stepRows(
  { plan, id, askedAt, arrivedAt }: Dated,
  clock: HospitalClock,
): (typeof loanSteps.$inferInsert)[] {
  const way = WAY.slice(0, WAY.indexOf(plan.state) + 1);
  const arrived = arrivedAt ?? askedAt;
  const left = iso(clock.now.getTime() - (plan.collectedHours ?? 0) * HOUR);
  const at: Partial<Record<LoanState, string>> = {
    asked: askedAt,
    confirmed: later(askedAt, 120),
    here: arrived,
    inService: later(arrived, 60),
    goingBack: later(left, -240),
    goneBack: left,
  };
  return way.map((state, index) => ({
    loanId: id,
    fromState: index === 0 ? null : (way[index - 1] ?? null),
    state: loanState.parse(state),
    note: state === 'goingBack' ? 'The period is over.' : null,
    personId: state === 'asked' ? plan.askedBy : 'person_dilys-harrow',
    doneAt: at[state] ?? askedAt,
    enteredAt: at[state] ?? askedAt,
  }));
}

export function trayRow({ plan, id, arrivedAt }: Dated): typeof loanTrays.$inferInsert {
  const set = plan.arrived?.set ?? null;
  const at = arrivedAt === null ? null : later(arrivedAt, 15);
  const weighed = plan.gramsIn !== undefined;
  return {
    loanId: id,
    tray: 1,
    gramsIn: plan.gramsIn ?? null,
    weighedInBy: weighed ? 'person_dilys-harrow' : null,
    weighedInAt: weighed ? at : null,
    tag: set,
    setId: set === null ? null : setIdOf(set),
    taggedBy: set === null ? null : 'person_dilys-harrow',
    taggedAt: set === null ? null : at,
  };
}

const iso = (ms: number) => new Date(ms).toISOString();
export const later = (at: string, minutes: number) => iso(Date.parse(at) + minutes * MINUTE);
