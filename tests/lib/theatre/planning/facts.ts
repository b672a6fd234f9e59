import { caseId, configurationId, setId, stockId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import type { CaseToServe, PlanningFacts, SetToGive } from '@/lib/theatre/planning/facts';

/** A Wednesday morning in winter time. */
export const NOW = '2026-01-14T06:30:00.000Z';

interface Sketch {
  urgency?: CaseToServe['urgency'];
  confirmed?: boolean;
  /** The sets that serve it, any one of them; `null`: not planned, `'short'`: nothing serves it. */
  by?: string[] | null | 'short';
  theatre?: string;
}

/** A case of two hours, its sets needed an hour before it begins. */
export function caseOf(reference: string, startsAt: string, sketch: Sketch = {}): CaseToServe {
  const { urgency = 'booked', confirmed = true, by = ['A-01', 'A-02'], theatre = '1' } = sketch;
  const none = { all: true, missing: [], outOfReach: [] };
  return {
    id: caseId.parse(`case_${reference.toLowerCase()}`),
    reference,
    revision: 1,
    theatreId: `theatre_${theatre}`,
    startsAt,
    endsAt: new Date(Date.parse(startsAt) + 2 * 3_600_000).toISOString(),
    leadMinutes: 60,
    caseDate: plainDate.parse(startsAt.slice(0, 10)),
    urgency,
    confirmed,
    ways:
      by === null
        ? null
        : by === 'short'
          ? { ...none, outcome: 'short', ways: [] }
          : {
              ...none,
              outcome: 'canBeMet',
              ways: [
                {
                  parts: [by.map((code) => setId.parse(`set_${code.toLowerCase()}`))],
                  packs: [],
                  asWished: true,
                },
              ],
            },
  } as CaseToServe;
}

export const setOf = (code: string, p50: number | null = 0, p90 = p50 ?? 0): SetToGive => ({
  id: setId.parse(`set_${code.toLowerCase()}`),
  code,
  revision: 1,
  configuration: code.slice(0, 1),
  readyMinutes: p50 === null ? null : { p50, p90 },
  inStore: p50 === 0,
});

/** A turn takes four hours half of the time, and five nine times in ten. */
export function factsOf(
  cases: CaseToServe[],
  sets: SetToGive[],
  promises: { case: string; set: string; by?: 'person' | 'planning' }[] = [],
): PlanningFacts {
  return {
    now: NOW,
    cases,
    sets,
    configurations: [...new Set(sets.map(({ configuration }) => configuration))].map((name) => ({
      id: configurationId.parse(`configuration_${name.toLowerCase()}`),
      name,
      stages: [{ stage: 'turn', p50Minutes: 240, p90Minutes: 300 }],
    })),
    pouches: [{ stockId: stockId.parse('stock_bit'), quantity: 1 }],
    promises: promises.map(({ case: one, set, by = 'person' }, at) => ({
      id: `promise_${at}`,
      caseId: caseId.parse(`case_${one.toLowerCase()}`),
      setId: setId.parse(`set_${set.toLowerCase()}`),
      chosenBy: by,
      fromAt: cases.find(({ reference }) => reference === one)?.startsAt ?? NOW,
      untilAt: cases.find(({ reference }) => reference === one)?.endsAt ?? NOW,
    })),
    rule: { planBy: 'p90', marginMinutes: 30 },
  };
}
