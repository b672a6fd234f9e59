import type { CaseCostOutput } from '@/lib/calculations/caseCost/schema';
import type { CompletenessOutput } from '@/lib/calculations/completeness/completeness';
import type { ExpiryLossOutput } from '@/lib/calculations/expiryLoss/schema';
import type { IdentifierOutput } from '@/lib/calculations/identifier/schema';
import type { LengthCoverOutput } from '@/lib/calculations/lengthCover/schema';
import type { LengthFeasibilityOutput } from '@/lib/calculations/lengthFeasibility/lengthFeasibility';
import type { LoanNoticeOutput } from '@/lib/calculations/loanNotice/schema';
import type { PlateRemarksOutput } from '@/lib/calculations/plateRemarks/schema';
import type { ReorderOutput } from '@/lib/calculations/reorder/schema';
import type { ServiceLifeOutput } from '@/lib/calculations/serviceLife/schema';
import type { SetReviewOutput } from '@/lib/calculations/setReview/schema';
import type { SetTurnaroundOutput } from '@/lib/calculations/setTurnaround/output';
import type { ThermalDoseOutput } from '@/lib/calculations/thermalDose/schema';
import type { TraceOutput } from '@/lib/calculations/trace/schema';
import { writePence } from '@/lib/quantities/money';
import { WASTE_SHARE_WORDS } from '@/lib/wording/case-cost';
import { unitsWord } from '@/lib/wording/expiry-loss';
import { schemeWord } from '@/lib/wording/identifier';
import { hoursWords, LOAN_OUTCOME_WORDS } from '@/lib/wording/loan-notice';
import { durationWords, HOLDING_WORDS } from '@/lib/wording/thermal-dose';
import { boundsWord } from '@/lib/wording/trace';

/** The figures of an answer that matter most, large. */
export interface Headline {
  label: string;
  value: string;
  unit?: string;
  note?: string;
}

const percent = (share: number): string => {
  const text = (Math.floor(share * 1000) / 10).toFixed(1);
  return share >= 1 ? '100' : text;
};

// Keyed by the registry's names: what comes in is that calculation's own output.
const HEADLINES: Record<string, (answer: never) => Headline[]> = {
  completeness: ({ pieces, mustHaves, mass }: CompletenessOutput) => [
    {
      label: 'Pieces',
      value: String(pieces.percent),
      unit: '%',
      note: `${pieces.found} of ${pieces.expected}`,
    },
    { label: 'Must-haves', value: `${mustHaves.met} of ${mustHaves.of}` },
    {
      label: 'Mass found',
      value: (mass.foundGrams / 1000).toFixed(2),
      unit: 'kg',
      ...(!mass.exact && { note: 'at least: some masses are not stated' }),
    },
  ],
  'length-cover': ({ cover, method, topUp }: LengthCoverOutput) => [
    {
      label: 'Cover',
      value: percent(cover),
      unit: '%',
      note:
        method.kind === 'exact'
          ? 'exact'
          : `simulated, standard error ${(method.standardError * 100).toFixed(2)} points`,
    },
    ...(topUp.state === 'found'
      ? [
          {
            label: `Top-up to reach ${percent(topUp.target)} %`,
            value: String(topUp.total),
            unit: topUp.total === 1 ? 'piece' : 'pieces',
            note:
              topUp.proof === 'smallest'
                ? 'none smaller reaches it'
                : `not proven smallest; at least ${topUp.atLeast}`,
          },
        ]
      : []),
  ],
  'length-feasibility': ({ filled, of }: LengthFeasibilityOutput) => [
    { label: 'Holes filled', value: `${filled} of ${of}` },
  ],
  identifier: ({ scheme, state, problems, readings }: IdentifierOutput) => [
    { label: 'Read as', value: schemeWord(scheme) },
    state === 'ambiguous'
      ? { label: 'Readings', value: String(readings.length) }
      : { label: 'Problems', value: String(problems.length) },
  ],
  reorder: ({ order, packs, orderUpTo, position, serviceWith }: ReorderOutput) => [
    {
      label: 'Order',
      value: String(order),
      unit: order === 1 ? 'piece' : 'pieces',
      note: `${packs} ${packs === 1 ? 'pack' : 'packs'}`,
    },
    { label: 'Order up to', value: String(orderUpTo), note: `position ${position}` },
    { label: 'Covered with it', value: percent(serviceWith), unit: '%' },
  ],
  'loan-notice': ({ outcome, due, lateMinutes, noticeMinutes }: LoanNoticeOutput) => [
    { label: 'Loan', value: LOAN_OUTCOME_WORDS[outcome], note: `due ${due.written}` },
    ...(lateMinutes ? [{ label: 'Late by', value: hoursWords(lateMinutes) }] : []),
    ...(noticeMinutes === null ? [] : [{ label: 'Notice', value: hoursWords(noticeMinutes) }]),
  ],
  'set-turnaround': ({ served, of, movedPromises, earliestFree, proof }: SetTurnaroundOutput) => [
    {
      label: 'Cases served',
      value: `${served} of ${of}`,
      note: proof.kind === 'optimal' ? 'proven best' : `at most ${proof.servedAtMost} could be`,
    },
    { label: 'Promises moved', value: String(movedPromises.length) },
    {
      label: 'More than the rule of thumb',
      value: String(earliestFree.more),
      note: 'each takes what has been free longest',
    },
  ],
  'set-review': ({ lines, cases, shareUsed }: SetReviewOutput) => [
    {
      label: 'Cost less as a pouch',
      value: `${lines.filter(({ verdict }) => verdict === 'pouch').length} of ${lines.length}`,
      note: 'lines, even at the bound',
    },
    {
      label: 'Too few cases to tell',
      value: String(
        lines.filter(({ verdict }) => verdict === 'notShown' || verdict === 'keepIfFetched').length,
      ),
      note: `${cases} cases`,
    },
    ...(shareUsed === null
      ? []
      : [
          {
            label: 'Lines a case uses',
            value: percent(shareUsed.share),
            unit: '%',
            note: shareUsed.comparison.sentence,
          },
        ]),
  ],
  'expiry-loss': ({ expectedLost, pointForecastLost, expectedLostPence }: ExpiryLossOutput) => [
    {
      label: 'Expected to be lost',
      value: unitsWord(expectedLost),
      unit: 'units',
      note: `the average alone would say ${unitsWord(pointForecastLost)}`,
    },
    ...(expectedLostPence === null ? [] : [{ label: 'Worth', value: writePence(expectedLostPence) }]),
  ],
  'service-life': ({ things }: ServiceLifeOutput) => [
    {
      label: 'Due',
      value: String(things.filter(({ state }) => state === 'replaceNow' || state === 'replaceAfter').length),
      note: 'now, or within what is booked',
    },
    { label: 'May be due', value: String(things.filter(({ state }) => state === 'mayBeDue').length) },
  ],
  'case-cost': ({ totalPence, wasted, wasteShare, wasteShareOf }: CaseCostOutput) => [
    { label: 'Cost', value: writePence(totalPence) },
    {
      label: 'Wasted',
      value: writePence(wasted.pence),
      ...(wasteShare !== null && { note: `${percent(wasteShare)} %: ${WASTE_SHARE_WORDS[wasteShareOf]}` }),
    },
  ],
  'plate-remarks': ({ remarks }: PlateRemarksOutput) => [
    {
      label: 'Outside a published range',
      value: String(remarks.filter(({ outcome }) => outcome === 'outside').length),
    },
    {
      label: 'Not established',
      value: String(remarks.filter(({ outcome }) => outcome === 'notEstablished').length),
    },
  ],
  trace: ({ destinations, cases, now }: TraceOutput) => [
    {
      label: 'Cases that may have had it',
      value: String(destinations.filter((one) => one.case !== null && one.hi > 0).length),
      note: `together ${boundsWord(cases)}`,
    },
    { label: 'To hold in the slot', value: String(now.toHold), note: `of the lot ${boundsWord(now)}` },
  ],
  'thermal-dose': ({ a0Seconds, f0Minutes, f0ReferenceC, holding }: ThermalDoseOutput) => [
    { label: 'A0', value: String(a0Seconds), unit: 's' },
    { label: 'F0', value: String(f0Minutes), unit: 'min', note: `reference ${f0ReferenceC} °C` },
    ...(holding === null
      ? []
      : [
          {
            label: 'Longest in the band',
            value: durationWords(holding.longestSeconds),
            note: `${HOLDING_WORDS[holding.outcome]}: ${durationWords(holding.requiredSeconds)} asked for`,
          },
        ]),
  ],
};

export function headlinesOf(name: string, answer: unknown): Headline[] {
  return answer ? (HEADLINES[name]?.(answer as never) ?? []) : [];
}
