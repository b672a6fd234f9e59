import { isPastUseBy, type PlainDate, plainDate } from '../quantities/plainDate';
import { type CycleSummary, cycleOutcome } from './cycle/summary';
import type { HoldsImplants } from './implants';
import type { IndicatorKind, IndicatorResult, LoadState, UnloadedAs } from './load';

export interface IndicatorFacts {
  kind: IndicatorKind;
  lot: string | null;
  useBy: string | null;
  result: IndicatorResult;
}

export interface PackFacts {
  /** Name of what is in it: the set's code, or the item's name. */
  name: string;
  number: string;
  unloadedAs: UnloadedAs | null;
  implants: HoldsImplants;
}

export interface AcceptanceFacts {
  state: LoadState;
  cycle: Pick<CycleSummary, 'dose' | 'missing'> | null;
  indicators: readonly IndicatorFacts[];
  requiredIndicators: readonly IndicatorKind[];
  implantsAwaitBiological: boolean;
  packs: readonly PackFacts[];
  /** Calendar date on which the load ran: indicators were used then. */
  ranOn: PlainDate | null;
}

/**
 * One thing to know before the load is decided. `stops`: it can't be accepted as it stands; `caution`: only with a
 * written reason; `note`: to be known. Nothing here accepts anything.
 */
export type AcceptanceFinding = { severity: 'stops' | 'caution' | 'note' } & (
  | { kind: 'notEnded' }
  | { kind: 'cycleKept' | 'cycleNotKept' | 'noCycleRecord' }
  | { kind: 'cycleNotEstablished'; missing: readonly string[] }
  | {
      kind: 'indicatorPassed' | 'indicatorNotUsed' | 'indicatorPending' | 'indicatorFailed';
      indicator: IndicatorKind;
    }
  | { kind: 'indicatorPastUseBy'; indicator: IndicatorKind; lot: string | null; useBy: string }
  | { kind: 'indicatorLotNotStated' | 'indicatorUseByNotStated'; indicator: IndicatorKind }
  | { kind: 'noPacks' }
  | { kind: 'notLookedAt'; packs: readonly string[] }
  | { kind: 'unfit'; as: Exclude<UnloadedAs, 'sound'>; packs: readonly string[] }
  | { kind: 'noneSound' }
  | { kind: 'allSound'; count: number }
  | { kind: 'implantsAwaitBiological'; packs: readonly string[] }
  | { kind: 'implantsNotEstablished'; packs: readonly string[] }
);

/** Everything there is to say about a load before a person decides; all of it at once, in the order it is looked at. */
export function acceptanceFindings(facts: AcceptanceFacts): AcceptanceFinding[] {
  return [
    ...(facts.state === 'awaitingAcceptance' ? [] : [{ severity: 'stops', kind: 'notEnded' } as const]),
    ...cycleFindings(facts),
    ...indicatorFindings(facts),
    ...packFindings(facts),
    ...implantFindings(facts),
  ];
}

function cycleFindings({ cycle }: AcceptanceFacts): AcceptanceFinding[] {
  if (cycle === null) return [{ severity: 'note', kind: 'noCycleRecord' }];
  switch (cycleOutcome(cycle)) {
    case 'notKept':
      return [{ severity: 'stops', kind: 'cycleNotKept' }];
    case 'notEstablished':
      return [{ severity: 'caution', kind: 'cycleNotEstablished', missing: cycle.missing }];
    case 'kept':
      return [
        { severity: 'note', kind: 'cycleKept' },
        // held all the same, but the sums are only the least they can be
        ...(cycle.missing.length === 0
          ? []
          : [{ severity: 'caution', kind: 'cycleNotEstablished', missing: cycle.missing } as const]),
      ];
  }
}

function indicatorFindings({ indicators, requiredIndicators, ranOn }: AcceptanceFacts): AcceptanceFinding[] {
  const lacking = requiredIndicators.filter((kind) => !indicators.some((one) => one.kind === kind));
  return [
    ...lacking.map((indicator) => ({ severity: 'stops', kind: 'indicatorNotUsed', indicator }) as const),
    ...indicators.flatMap((one): AcceptanceFinding[] => {
      const indicator = one.kind;
      const required = requiredIndicators.includes(indicator);
      return [
        one.result === 'failed'
          ? { severity: 'stops', kind: 'indicatorFailed', indicator }
          : one.result === 'pending'
            ? { severity: required ? 'stops' : 'note', kind: 'indicatorPending', indicator }
            : { severity: 'note', kind: 'indicatorPassed', indicator },
        ...lotFindings(one, required, ranOn),
      ];
    }),
  ];
}

/** Lots concern what is bought and goes past use-by; a printed record has none. */
function lotFindings(one: IndicatorFacts, required: boolean, ranOn: PlainDate | null): AcceptanceFinding[] {
  const indicator = one.kind;
  if (indicator === 'printedRecord') return [];
  const severity = required ? 'caution' : 'note';
  const found: AcceptanceFinding[] = [];
  if (one.lot === null) found.push({ severity, kind: 'indicatorLotNotStated', indicator });
  if (one.useBy === null) found.push({ severity, kind: 'indicatorUseByNotStated', indicator });
  else if (ranOn !== null && isPastUseBy(plainDate.parse(one.useBy), ranOn))
    found.push({ severity: 'stops', kind: 'indicatorPastUseBy', indicator, lot: one.lot, useBy: one.useBy });
  return found;
}

function packFindings({ packs }: AcceptanceFacts): AcceptanceFinding[] {
  if (packs.length === 0) return [{ severity: 'stops', kind: 'noPacks' }];
  const named = (chosen: readonly PackFacts[]) => chosen.map(({ name }) => name);
  const unseen = packs.filter((pack) => pack.unloadedAs === null);
  const unfit = (['wet', 'torn', 'unsealed'] as const).flatMap((as): AcceptanceFinding[] => {
    const found = packs.filter((pack) => pack.unloadedAs === as);
    return found.length === 0 ? [] : [{ severity: 'note', kind: 'unfit', as, packs: named(found) }];
  });
  const sound = packs.filter((pack) => pack.unloadedAs === 'sound').length;
  return [
    ...(unseen.length === 0
      ? []
      : [{ severity: 'stops', kind: 'notLookedAt', packs: named(unseen) } as const]),
    ...unfit,
    ...(unseen.length === 0 && sound === 0 ? [{ severity: 'stops', kind: 'noneSound' } as const] : []),
    ...(sound === packs.length ? [{ severity: 'note', kind: 'allSound', count: sound } as const] : []),
  ];
}

function implantFindings(facts: AcceptanceFacts): AcceptanceFinding[] {
  if (!facts.implantsAwaitBiological || biologicalPassed(facts.indicators)) return [];
  const sound = facts.packs.filter(({ unloadedAs }) => unloadedAs === null || unloadedAs === 'sound');
  const [withThem, unknown] = (['yes', 'notEstablished'] as const).map((which) =>
    sound.filter(({ implants }) => implants === which).map(({ name }) => name),
  );
  return [
    ...(withThem && withThem.length > 0
      ? [{ severity: 'stops', kind: 'implantsAwaitBiological', packs: withThem } as const]
      : []),
    ...(unknown && unknown.length > 0
      ? [{ severity: 'stops', kind: 'implantsNotEstablished', packs: unknown } as const]
      : []),
  ];
}

/** A biological result that speaks for the load: at least one passed, none pending, none failed. */
export function biologicalPassed(indicators: readonly Pick<IndicatorFacts, 'kind' | 'result'>[]): boolean {
  const results = indicators.filter(({ kind }) => kind === 'biological').map(({ result }) => result);
  return results.length > 0 && results.every((result) => result === 'passed');
}

/** What the documented exception may set aside: only that implants wait. Everything else still stops. */
export const isAboutImplants = ({ kind }: AcceptanceFinding): boolean =>
  kind === 'implantsAwaitBiological' || kind === 'implantsNotEstablished';
