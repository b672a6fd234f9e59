import { groupBy } from '../../lists/groupBy';
import type { DayReportFacts, DaySetFacts } from './facts';
import type { CaseLine } from './lines';

/** A set that cases of the day count on, or could have had. */
export interface WantedSet {
  set: DaySetFacts;
  /** Half of the time and nine times in ten; `null` where nobody can say. */
  expected: { p50At: string; p90At: string } | null;
  /** The cases that count on it first, by when they need it. */
  by: { caseId: string; reference: string; needByAt: string | null; promised: boolean }[];
  /** When the first of them needs it. */
  needByAt: string | null;
  /** Minutes by which nine-in-ten ready misses that, below zero; with the wanted margin still to be taken off. */
  marginMinutes: number | null;
}

/**
 * The sets that are not in the sterile store, not in theatre for the very case, and that a case of the day counts on: one that it
 * gets as planned straight from where it is now, one that is promised to it, and one that stood in the way of it getting any.
 */
export function wantedSets(facts: DayReportFacts, lines: readonly CaseLine[]): WantedSet[] {
  const { planning, answer, sets } = facts;
  const byCode = new Map(sets.map((set) => [set.code, set]));
  const ready = new Map(planning.sets.map((set) => [set.code, set.readyMinutes]));
  const wants = lines.flatMap((line) => {
    const { id: caseId, reference, promised } = line.facts;
    const own = promised.filter(({ inUse }) => !inUse).map(({ code }) => code);
    const gets = line.sets.filter(({ afterCase, there }) => afterCase === null && !there);
    const near = nearest(answer, reference);
    const codes = new Set([...own, ...gets.map(({ code }) => code), ...near]);
    const { needByAt } = line;
    return [...codes].map((code) => ({
      code,
      want: { caseId, reference, needByAt, promised: own.includes(code) },
    }));
  });
  return [...groupBy(wants, ({ code }) => code)].flatMap(([code, group]): WantedSet[] => {
    const set = byCode.get(code);
    if (!set || set.step === 'inSterileStore') return [];
    const by = group
      .map(({ want }) => want)
      .sort((a, b) => (a.needByAt ?? '9').localeCompare(b.needByAt ?? '9'));
    const minutes = ready.get(code) ?? null;
    const at = (more: number) => new Date(Date.parse(planning.now) + more * 60_000).toISOString();
    const expected = minutes && { p50At: at(minutes.p50), p90At: at(minutes.p90) };
    const needByAt = by[0]?.needByAt ?? null;
    return [
      {
        set,
        expected,
        by,
        needByAt,
        marginMinutes:
          expected === null || needByAt === null
            ? null
            : Math.floor((Date.parse(needByAt) - Date.parse(expected.p90At)) / 60_000),
      },
    ];
  });
}

/** For a case that no set is free for: those that are not ready in time, the one that misses by the least first. */
function nearest(answer: DayReportFacts['answer'], reference: string): string[] {
  const ways = answer?.unserved.find((one) => one.case === reference)?.ways ?? [];
  const late = ways
    .flatMap(({ obstacles }) => obstacles)
    .filter(({ kind }) => kind === 'notReady')
    .sort((a, b) => (a.missesMinutes ?? Infinity) - (b.missesMinutes ?? Infinity));
  return late.slice(0, 1).map(({ set }) => set);
}

/** A set that two cases of the day have, one after the other. */
export interface TurnedBetween {
  setId: string | null;
  code: string;
  first: string;
  second: string;
  secondCaseId: string;
  firstEndsAt: string;
  /** When it is back as planned; `null`: not known. */
  backAt: string | null;
  needByAt: string | null;
  marginMinutes: number | null;
  tight: boolean;
}

/** Sets that are to be turned between two cases of the day, by when the second needs them. */
export function turnedBetween({ cases }: DayReportFacts, lines: readonly CaseLine[]): TurnedBetween[] {
  const ofDay = new Map(cases.map((one) => [one.reference, one]));
  return lines
    .flatMap(({ facts, sets, needByAt }) =>
      sets.flatMap((set): TurnedBetween[] => {
        const before =
          set.afterCase === null
            ? cases.find((one) => one.promised.some(({ code, inUse }) => inUse && code === set.code))
            : ofDay.get(set.afterCase);
        if (!before || before.id === facts.id) return [];
        return [
          {
            setId: set.setId,
            code: set.code,
            first: before.reference,
            second: facts.reference,
            secondCaseId: facts.id,
            firstEndsAt: before.endsAt,
            backAt: set.readyAt,
            needByAt,
            marginMinutes: set.marginMinutes,
            tight: set.tight,
          },
        ];
      }),
    )
    .sort((a, b) => (a.needByAt ?? '9').localeCompare(b.needByAt ?? '9') || a.code.localeCompare(b.code));
}

/** A set that is short, held or undecided, of a kind that a case of the day asks for. */
export interface LackingSet {
  set: DaySetFacts;
  /** References of the cases it is promised to or given to; then those that ask for its kind. */
  counting: string[];
  askingForKind: string[];
}

/**
 * Sets short or held that any of the cases wants: those a case counts on first; then those of the kinds that it gets, or, where
 * no set is free for it, that stood in its way.
 */
export function lackingSets({ answer, sets }: DayReportFacts, lines: readonly CaseLine[]): LackingSet[] {
  const kindOf = new Map(sets.map(({ code, configuration }) => [code, configuration]));
  const asked = lines.map(({ facts, sets: gets }) => {
    const ways = answer?.unserved.find((one) => one.case === facts.reference)?.ways ?? [];
    const counted = new Set([...facts.promised, ...gets].map(({ code }) => code));
    const near = ways.flatMap(({ obstacles }) => obstacles.map(({ set }) => set));
    const kinds = new Set([...counted, ...near].flatMap((code) => kindOf.get(code) ?? []));
    return { reference: facts.reference, counted, kinds };
  });
  return sets
    .filter(({ step, mustHaveShort }) => step === 'held' || step === 'shortAwaitingDecision' || mustHaveShort)
    .flatMap((set): LackingSet[] => {
      const counting = asked.filter(({ counted }) => counted.has(set.code));
      const forKind = asked.filter(
        ({ counted, kinds }) => !counted.has(set.code) && kinds.has(set.configuration),
      );
      if (counting.length + forKind.length === 0) return [];
      const references = (list: typeof asked) => list.map(({ reference }) => reference);
      return [{ set, counting: references(counting), askingForKind: references(forKind) }];
    })
    .sort(
      (a, b) =>
        Number(b.counting.length > 0) - Number(a.counting.length > 0) || a.set.code.localeCompare(b.set.code),
    );
}
