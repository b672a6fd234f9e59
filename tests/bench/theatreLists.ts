import type { Plan } from '@/lib/turnaround/plan';
import type { PlannedCase, TurnaroundProblem, Way } from '@/lib/turnaround/problem';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
/** A Monday. */
const BEGIN = Date.UTC(2026, 0, 12);
const LINES = 6;

export interface ListSize {
  days: number;
  cases: number;
  kinds: number;
  copies: number;
  theatres: number;
}

/** Numbers as if by chance, the same in every run (mulberry32). */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/**
 * An invented hospital's list: kinds of set that are asked for more and less often, every sixth set short of one line, which
 * serves only cases that do not need it; every third case may also be done with another kind and a pouch, every tenth
 * needs two sets. Eight per cent are urgent.
 *
 * @param standing the plan made before: its promises hold, and then two sets in five are late and three emergencies come
 */
export function theatreList(seed: number, size: ListSize, standing: Plan | null = null): TurnaroundProblem {
  const next = chance(seed);
  const below = (most: number) => Math.floor(next() * most);
  const turns = Array.from({ length: size.kinds }, () => {
    const p50 = (270 + below(210)) * MINUTE;
    return { p50, p90: p50 + (40 + below(110)) * MINUTE };
  });
  const sets = Array.from({ length: size.kinds * size.copies }, (_, number) => {
    const p50 = BEGIN + (next() < 0.7 ? 0 : below(14 * 60) * MINUTE);
    return {
      kind: number % size.kinds,
      short: next() < 1 / 6 ? below(LINES) : null,
      readyMs: { p50, p90: p50 === BEGIN ? p50 : p50 + (30 + below(90)) * MINUTE },
      turnMs: turns[number % size.kinds] as { p50: number; p90: number },
    };
  });
  // the first kinds are asked for most
  const kind = () => Math.floor(size.kinds * next() ** 1.6);
  const of = (wanted: number, lines: readonly number[]) =>
    sets.flatMap((set, number) =>
      set.kind === wanted && (set.short === null || !lines.includes(set.short)) ? [number] : [],
    );
  const caseAt = (startMs: number, minutes: number, rank: number, theatre: number): PlannedCase => {
    const lines = [below(LINES), below(LINES), below(LINES)];
    const wanted = kind();
    const parts = [of(wanted, lines)];
    if (next() < 0.1) parts.push(of((wanted + 1 + below(size.kinds - 1)) % size.kinds, lines));
    const ways: Way[] = [{ parts, pouches: [], penalty: 0 }];
    if (next() < 1 / 3)
      ways.push({
        parts: [of((wanted + 1) % size.kinds, lines)],
        pouches: [wanted % 4],
        penalty: 1,
      });
    return {
      needMs: startMs - 60 * MINUTE,
      startMs,
      endMs: startMs + minutes * MINUTE,
      rank,
      theatre: String(theatre),
      ways,
    };
  };
  const cases: PlannedCase[] = [];
  const perSession = Math.ceil(size.cases / (size.days * size.theatres));
  while (cases.length < size.cases) {
    const session = Math.floor(cases.length / perSession);
    let at = BEGIN + Math.floor(session / size.theatres) * DAY + 8 * HOUR + 30 * MINUTE;
    for (let place = 0; place < perSession && cases.length < size.cases; place += 1) {
      const minutes = 30 + below(60);
      cases.push(caseAt(at, minutes, next() < 0.08 ? 1 + below(2) : 3, session % size.theatres));
      at += (minutes + 10) * MINUTE;
    }
  }
  const problem = {
    cases,
    sets: sets.map(({ readyMs, turnMs }) => ({ readyMs, turnMs })),
    pouches: [3, 3, 3, 3],
    promises: [],
    rule: { planBy: 'p90' as const, wantedMarginMs: 0 },
  };
  if (!standing) return problem;
  const promises = standing.flatMap((service, one) =>
    (service?.sets ?? []).map((set) => ({ case: one, set, moveCost: 1, fixed: false })),
  );
  const late = problem.sets.map((set) => {
    if (next() >= 0.4) return set;
    const by = (60 + below(240)) * MINUTE;
    const from = Math.max(set.readyMs.p90, BEGIN + 6 * HOUR);
    return { ...set, readyMs: { p50: from + by, p90: from + by + HOUR } };
  });
  const emergencies = [0, 1, 2].map(() =>
    caseAt(BEGIN + below(size.days) * DAY + below(20 * 60) * MINUTE + HOUR, 90, 0, size.theatres),
  );
  return { ...problem, cases: [...cases, ...emergencies], sets: late, promises };
}
