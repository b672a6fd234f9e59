import { isPastUseBy } from '../../quantities/plainDate';
import type { Stop } from '../../sets/standing';
import type { NextAct } from '../../turns/queue';
import type { DayReportFacts, DaySetFacts } from './facts';
import type { CaseLine } from './lines';
import type { TurnedBetween, WantedSet } from './wantedSets';

/** One thing to be done for a day, and by when. */
export type FirstStep = { needByAt: string | null; cases: { caseId: string; reference: string }[] } & (
  | { kind: 'promiseNotKept'; set: { id: string; code: string }; why: NotKept }
  | { kind: 'shortStops'; set: DaySetFacts; stop: Stop }
  | { kind: 'decideShort'; set: DaySetFacts }
  | { kind: 'acceptLoad'; load: { id: string; number: string }; sets: DaySetFacts[] }
  | { kind: 'closeCount'; set: DaySetFacts }
  | { kind: 'hurry'; set: DaySetFacts; act: NextAct; wanted: WantedSet }
  | { kind: 'hurryBetween'; turned: TurnedBetween }
  | { kind: 'noSetFree' | 'shortOf'; line: CaseLine }
  | { kind: 'plan' | 'confirmPlan' }
);

type NotKept =
  | { kind: 'held'; set: DaySetFacts }
  | { kind: 'outOfService' }
  | { kind: 'pastUseBy'; useBy: string }
  /** Planning had to give the case others. */
  | { kind: 'others'; to: string[]; because: 'notReady' | 'notSuitable' | 'betterPlan' };

/**
 * What to do first: everything that keeps a case of the day from being ready and that somebody can do something about, in the
 * order in which the sets must stand in theatre.
 */
export function firstSteps(
  facts: DayReportFacts,
  lines: readonly CaseLine[],
  wanted: readonly WantedSet[],
  turned: readonly TurnedBetween[],
): FirstStep[] {
  const open = lines.filter(({ bucket }) => bucket !== 'over' && bucket !== 'begun');
  const steps = [
    ...notKept(facts, open),
    ...shortStops(facts, open),
    ...setSteps(wanted, facts.planning.rule.marginMinutes),
    ...turned
      .filter(({ tight }) => tight)
      .map(
        (one): FirstStep => ({
          kind: 'hurryBetween',
          turned: one,
          needByAt: one.needByAt,
          cases: [{ caseId: one.secondCaseId, reference: one.second }],
        }),
      ),
    ...open.flatMap(caseSteps),
  ];
  return steps
    .map((step, at) => ({ step, at }))
    .sort(
      (a, b) =>
        (a.step.needByAt ?? '9').localeCompare(b.step.needByAt ?? '9') ||
        ORDER.indexOf(a.step.kind) - ORDER.indexOf(b.step.kind) ||
        a.at - b.at,
    )
    .map(({ step }) => step);
}

/** Of what must be done by the same minute: what stops most first. */
const ORDER: FirstStep['kind'][] = [
  'shortOf',
  'noSetFree',
  'promiseNotKept',
  'shortStops',
  'decideShort',
  'acceptLoad',
  'closeCount',
  'hurry',
  'hurryBetween',
  'plan',
  'confirmPlan',
];

const caseOf = ({ facts: { id, reference } }: CaseLine) => ({ caseId: id as string, reference });

function notKept({ sets, answer }: DayReportFacts, lines: readonly CaseLine[]): FirstStep[] {
  const byId = new Map(sets.map((set) => [set.id as string, set]));
  return lines.flatMap((line) =>
    line.facts.promised.flatMap(({ setId, code, inUse, outOfService }): FirstStep[] => {
      const set = byId.get(setId);
      const moved = answer?.movedPromises.find(
        (one) => one.case === line.facts.reference && one.from === code,
      );
      const why: NotKept | null = inUse
        ? null
        : outOfService
          ? { kind: 'outOfService' }
          : set?.step === 'held'
            ? { kind: 'held', set }
            : set?.step === 'inSterileStore' &&
                set.useBy !== null &&
                isPastUseBy(set.useBy, line.facts.caseDate)
              ? { kind: 'pastUseBy', useBy: set.useBy }
              : moved
                ? { kind: 'others', to: moved.to, because: moved.because }
                : null;
      if (why === null) return [];
      return [
        {
          kind: 'promiseNotKept',
          set: { id: setId, code },
          why,
          needByAt: line.needByAt,
          cases: [caseOf(line)],
        },
      ];
    }),
  );
}

function shortStops({ sets }: DayReportFacts, lines: readonly CaseLine[]): FirstStep[] {
  return sets.flatMap((set) =>
    // who decides on it is asked for below, and nothing else can be done about a held one first
    set.step === 'held' || set.step === 'shortAwaitingDecision'
      ? []
      : set.stops.flatMap((stop): FirstStep[] => {
          const line = stop.kind === 'case' ? lines.find(({ facts }) => facts.id === stop.caseId) : undefined;
          if (!line) return [];
          return [{ kind: 'shortStops', set, stop, needByAt: line.needByAt, cases: [caseOf(line)] }];
        }),
  );
}

function setSteps(wanted: readonly WantedSet[], marginMinutes: number): FirstStep[] {
  const steps: FirstStep[] = [];
  for (const one of wanted) {
    const { set, by, needByAt } = one;
    const cases = by.map(({ caseId, reference }) => ({ caseId, reference }));
    const late = one.marginMinutes === null || one.marginMinutes < marginMinutes;
    if (set.step === 'shortAwaitingDecision') steps.push({ kind: 'decideShort', set, needByAt, cases });
    else if (set.act === 'accept' && set.load !== null) {
      const { load } = set;
      const same = steps.find((step) => step.kind === 'acceptLoad' && step.load.id === load.id);
      if (same?.kind === 'acceptLoad') {
        same.sets.push(set);
        same.cases = [...new Map([...same.cases, ...cases].map((each) => [each.caseId, each])).values()];
        if (needByAt !== null && (same.needByAt === null || needByAt < same.needByAt))
          same.needByAt = needByAt;
      } else steps.push({ kind: 'acceptLoad', load, sets: [set], needByAt, cases });
    } else if (set.count !== null) steps.push({ kind: 'closeCount', set, needByAt, cases });
    // one that is held is a promise not kept, or in nobody's plan
    else if (late && set.act !== null && set.step !== 'held')
      steps.push({ kind: 'hurry', set, act: set.act, wanted: one, needByAt, cases });
  }
  return steps;
}

function caseSteps(line: CaseLine): FirstStep[] {
  const { needByAt, standing, confirmed } = line;
  const step = { needByAt, cases: [caseOf(line)] };
  const draft = standing !== null && standing.kind !== 'notPlanned' && !confirmed;
  return [
    ...(standing?.kind === 'noSetFree' || standing?.kind === 'shortOf'
      ? [{ ...step, kind: standing.kind, line }]
      : []),
    ...(standing?.kind === 'notPlanned' ? [{ ...step, kind: 'plan' as const }] : []),
    ...(draft ? [{ ...step, kind: 'confirmPlan' as const }] : []),
  ];
}
