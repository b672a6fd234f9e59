import type { SetTurnaroundOutput } from '../calculations/setTurnaround/output';
import type { CaseId, SetId, StockId } from '../identity/ids';
import type { CaseToServe, FactOfPromise, PlanningFacts } from '../theatre/planning/facts';

/** The emergency case and what is taken for it. */
export interface Taking {
  caseId: CaseId;
  reference: string;
  theatreId: string;
  startsAt: string;
  endsAt: string;
  /** From when the sets are spoken for: the lead, or what is left of it. */
  fromAt: string;
  /** Each set, and until when it is spoken for. */
  sets: readonly { setId: SetId; untilAt: string }[];
  packs: readonly { stockId: StockId; quantity: number }[];
}

/** Promises of other cases that what is taken cannot keep. */
export function brokenPromises(facts: Pick<PlanningFacts, 'promises'>, taking: Taking): FactOfPromise[] {
  return facts.promises.filter(
    ({ caseId, setId, fromAt, untilAt }) =>
      caseId !== taking.caseId &&
      taking.sets.some((taken) => taken.setId === setId && fromAt < taken.untilAt && untilAt > taking.fromAt),
  );
}

/**
 * The facts as they would be: the emergency is served before all others by just these sets, and who was promised one of them
 * over that time is planned for anew like a case that was promised nothing of it. All other promises stand.
 */
export function factsWithTaking(facts: PlanningFacts, taking: Taking): PlanningFacts {
  const { caseId, reference, theatreId, startsAt, endsAt, fromAt, sets, packs } = taking;
  const broken = new Set(brokenPromises(facts, taking).map(({ id }) => id));
  const emergency: CaseToServe = {
    id: caseId,
    reference,
    // no act is asked for against a case that is only foreseen
    revision: facts.cases.find(({ id }) => id === caseId)?.revision ?? 1,
    theatreId,
    startsAt,
    endsAt,
    leadMinutes: Math.max(0, Math.floor((Date.parse(startsAt) - Date.parse(fromAt)) / 60_000)),
    urgency: 'now',
    ways: {
      outcome: 'canBeMet',
      ways: [{ parts: sets.map(({ setId }) => [setId]), packs: [...packs], asWished: true }],
      all: true,
      missing: [],
      outOfReach: [],
    },
    confirmed: false,
  };
  return {
    ...facts,
    cases: [...facts.cases.filter(({ id }) => id !== caseId), emergency],
    promises: [
      ...facts.promises.filter((promise) => promise.caseId !== caseId && !broken.has(promise.id)),
      ...sets.map(({ setId, untilAt }, at) => ({
        id: `taking-${at}`,
        caseId,
        setId,
        chosenBy: 'person' as const,
        fromAt,
        untilAt,
      })),
    ],
  };
}

/** What another case gets in the place of what it loses. */
export type Instead =
  | {
      kind: 'sets';
      sets: { setId: SetId; code: string; there: boolean; readyAt: string }[];
      pouches: string[];
    }
  /** Nothing that serves its plan is left; when it could begin, where that can be said. */
  | { kind: 'none'; couldStartAt: string | null }
  /** Nobody has planned it, so nothing can be found for it. */
  | { kind: 'notPlanned' };

/** One case that loses by it. */
export interface Hit {
  caseId: CaseId;
  reference: string;
  startsAt: string;
  /** It was only counted on for it, not promised. */
  tentative: boolean;
  loses: { setId: SetId; code: string }[];
  instead: Instead;
}

type Answer = SetTurnaroundOutput | null;

/**
 * Which cases lose a set by the new plan, and what they get instead: every case whose promise it cannot keep, and every case that
 * had sets by the plan before and has none by this one. Who keeps all that was promised is not in it.
 */
export function hitsOf(facts: PlanningFacts, taking: Taking, before: Answer, after: Answer): Hit[] {
  const broken = new Set(brokenPromises(facts, taking).map(({ id }) => id));
  const codeOf = new Map(facts.sets.map(({ id, code }) => [id, code]));
  const nowMs = Date.parse(facts.now);
  return facts.cases
    .filter(({ id }) => id !== taking.caseId)
    .flatMap((one): Hit[] => {
      const given = after?.assignments.find(({ case: name }) => name === one.reference);
      const has = new Set(given?.sets.map(({ set }) => set));
      const promised = facts.promises.filter(({ caseId }) => caseId === one.id);
      const lost = promised.filter(
        ({ id, setId, chosenBy }) =>
          broken.has(id) || (chosenBy === 'planning' && !has.has(codeOf.get(setId) ?? '')),
      );
      const counted = before?.assignments.find(({ case: name }) => name === one.reference);
      const tentative = lost.length === 0;
      if (tentative && (promised.length > 0 || given || !counted)) return [];
      const loses = tentative
        ? (counted?.sets ?? []).map(({ set }) => set)
        : lost.map(({ setId }) => codeOf.get(setId) ?? setId);
      const keeps = new Set(
        promised.filter((promise) => !lost.includes(promise)).map(({ setId }) => codeOf.get(setId)),
      );
      const idOf = (code: string) => facts.sets.find((set) => set.code === code)?.id as SetId;
      const told = { caseId: one.id, reference: one.reference, startsAt: one.startsAt, tentative };
      return [
        {
          ...told,
          loses: loses.map((code) => ({ setId: idOf(code), code })),
          instead: insteadOf(one, given, after, (code) => !keeps.has(code), idOf, nowMs),
        },
      ];
    });
}

function insteadOf(
  one: CaseToServe,
  given: SetTurnaroundOutput['assignments'][number] | undefined,
  after: Answer,
  isNew: (code: string) => boolean,
  idOf: (code: string) => SetId,
  nowMs: number,
): Instead {
  if (given)
    return {
      kind: 'sets',
      pouches: given.pouches,
      sets: given.sets
        .filter(({ set }) => isNew(set))
        .map(({ set, readyAtMs, afterCase }) => ({
          setId: idOf(set),
          code: set,
          there: afterCase === null && readyAtMs <= nowMs,
          readyAt: new Date(readyAtMs).toISOString(),
        })),
    };
  if (one.ways === null || one.ways.ways.length === 0) return { kind: 'notPlanned' };
  const without = after?.unserved.find(({ case: name }) => name === one.reference);
  const startMs = without?.startAtMs ?? null;
  return { kind: 'none', couldStartAt: startMs === null ? null : new Date(startMs).toISOString() };
}

/** What was shown of it, as a text to compare: whoever confirms confirms this and nothing else. */
export function shownOf(hits: readonly Hit[]): string {
  return hits
    .map(({ reference, loses, instead }) => {
      const gets = instead.kind === 'sets' ? instead.sets.map(({ code }) => code).join('+') : instead.kind;
      return `${reference}:${loses.map(({ code }) => code).join('+')}>${gets}`;
    })
    .sort()
    .join(';');
}
