import type { FigureTable } from '../documents/figureTable';
import { groupBy } from '../lists/groupBy';
import type { Reason } from '../reasons/reason';
import { delayStep } from '../usage/act';
import { costsWords as words } from '../wording/costs';
import { NO_REASON, reasonWords } from '../wording/reasons';
import { DELAY_STEP_WORDS } from '../wording/usage';
import type { CostedCase } from './costedCase';
import { procedureOf } from './costTables';
import { keptOf } from './keptOf';
import {
  type DelayFact,
  type DelayGroup,
  delayGroups,
  type WasteGroup,
  type WrittenOff,
  wasteByNamedReason,
  wasteBySet,
  writtenOffByReason,
} from './reasonGroups';

export const REASON_TABLES = [
  'wasteReasons',
  'wasteReasonsByProcedure',
  'wasteReasonsBySet',
  'wasteReasonsByCase',
  'writtenOff',
  'delayReasons',
  'delaysByProcedure',
  'delaysBySet',
  'delaysByCase',
] as const;
export type ReasonTable = (typeof REASON_TABLES)[number];

/** What the tables of reasons are made from. */
export interface ReasonFacts {
  cases: readonly CostedCase[];
  delays: readonly DelayFact[];
  writtenOff: readonly WrittenOff[];
  reasons: readonly Reason[];
  /** Names a configuration. */
  nameOf: (configurationId: string) => string;
}

/** A reason by its id, in words; one that nobody gave is `not stated`. */
export function reasonName(reasons: readonly Reason[], id: string | null): string {
  const reason = reasons.find((one) => one.id === id);
  return reason ? reasonWords(reason) : NO_REASON;
}

const column = (header: string, kind: FigureTable['columns'][number]['kind'] = 'number') => ({
  header,
  kind,
});
const REASON = column('Reason', 'text');
const WASTE = [
  column('Cases'),
  column('Pieces'),
  column('Wasted', 'pence'),
  column('Pieces without a price'),
];
const wasteCells = ({ cases, pieces, pence, unknown }: WasteGroup) => [cases, pieces, pence, unknown];
const DELAYS = [
  column('Delays'),
  column('Cases'),
  column('With minutes stated'),
  column('Minutes in all'),
  column('A quarter took less than, minutes'),
  column('Half took less than, minutes'),
  column('A quarter took more than, minutes'),
  column('Without a reason'),
];
const delayCells = (one: DelayGroup) => [
  one.delays,
  one.cases,
  one.stated,
  one.stated === 0 ? null : one.minutes,
  one.lowerMinutes,
  one.medianMinutes,
  one.upperMinutes,
  one.noReason,
];

/** Waste and delay by the hospital's own reasons, as tables for charts and files. None names a person. */
export function reasonTable(which: ReasonTable, facts: ReasonFacts): FigureTable {
  const { cases, delays, reasons, nameOf } = facts;
  const head = { name: `reasons-${which}`, caption: words.reasonTables[which] };
  const say = (id: string | null) => reasonName(reasons, id);
  const byKey = (key: string, own: readonly WasteGroup[]) =>
    own.map((one) => [key, say(one.reasonId), ...wasteCells(one)]);
  switch (which) {
    case 'wasteReasons':
      return {
        ...head,
        columns: [REASON, ...WASTE],
        rows: wasteByNamedReason(cases).map((one) => [say(one.reasonId), ...wasteCells(one)]),
      };
    case 'wasteReasonsByProcedure':
      return {
        ...head,
        columns: [column('Procedure', 'text'), REASON, ...WASTE],
        rows: keptOf(cases, 'reasons by procedure', () =>
          [...groupBy(cases, procedureOf)].map(([key, its]) => [key, wasteByNamedReason(its)] as const),
        ).flatMap(([key, groups]) => byKey(key, groups)),
      };
    case 'wasteReasonsBySet':
      return {
        ...head,
        columns: [column('Set configuration', 'text'), REASON, ...WASTE],
        rows: [...keptOf(cases, 'reasons by set', () => wasteBySet(cases))].flatMap(([id, groups]) =>
          byKey(nameOf(id), groups),
        ),
      };
    case 'wasteReasonsByCase':
      return {
        ...head,
        columns: [column('Case', 'text'), column('Day', 'text'), REASON, ...WASTE.slice(1)],
        rows: [...cases]
          .reverse()
          .flatMap((one) =>
            wasteByNamedReason([one]).map((group) => [
              one.reference,
              one.on,
              say(group.reasonId),
              ...wasteCells(group).slice(1),
            ]),
          ),
      };
    case 'writtenOff':
      return {
        ...head,
        columns: [REASON, ...WASTE.slice(1)],
        rows: writtenOffByReason(facts.writtenOff).map((one) => [
          say(one.reasonId),
          ...wasteCells(one).slice(1),
        ]),
      };
    case 'delayReasons':
      return {
        ...head,
        columns: [REASON, ...DELAYS.slice(0, -1)],
        rows: delayGroups(delays, ({ reasonId }) => [reasonId ?? '']).map((one) => [
          say(one.key),
          ...delayCells(one).slice(0, -1),
        ]),
      };
    case 'delaysByProcedure':
      return {
        ...head,
        columns: [column('Procedure', 'text'), ...DELAYS],
        rows: delayGroups(delays, (one) => [procedureOf(one)]).map((one) => [one.key, ...delayCells(one)]),
      };
    case 'delaysBySet':
      return {
        ...head,
        columns: [column('Set configuration', 'text'), ...DELAYS],
        rows: delayGroups(delays, ({ configurationIds }) => configurationIds).map((one) => [
          nameOf(one.key),
          ...delayCells(one),
        ]),
      };
    case 'delaysByCase':
      return {
        ...head,
        columns: [
          column('Case', 'text'),
          column('Day', 'text'),
          column('Procedure', 'text'),
          column('Minutes'),
          REASON,
          column('When', 'text'),
        ],
        rows: [...delays].reverse().map((one) => {
          const step = delayStep.safeParse(one.step);
          return [
            one.reference,
            one.on,
            procedureOf(one),
            one.minutes,
            say(one.reasonId),
            step.success ? DELAY_STEP_WORDS[step.data] : null,
          ];
        }),
      };
  }
}
