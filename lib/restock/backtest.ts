import type { DemandModel } from './demandModel';
import { unbookedDemand } from './forecast';
import { learn, PERIOD_DAYS } from './learn';
import { type Levels, levelsOf, orderAt, type Standing } from './order';
import type { Use, UseRecord } from './record';

/** How orders are worked out; those of `reorder`. */
export interface RestockRule {
  leadDays: number;
  leadSdDays: number;
  reviewDays: number;
  service: number;
  packOf: number;
  /** Days a piece is good for as it comes; `null`: it does not run out. */
  shelfLifeDays: number | null;
  sureOfUse: number;
  alpha: number;
}

export interface BacktestQuestion {
  record: UseRecord;
  /** Days at the beginning of the record that are only learned from. */
  warmUpDays: number;
  rule: RestockRule;
  /** The plain par level: ordered up to at every review, whatever is booked or expected. Both ways begin with so many. */
  par: number;
}

export interface Replayed {
  /** Pieces and cases that asked, and of those what was there. A piece that is not there is got elsewhere, and lost to us. */
  asked: number;
  served: number;
  cases: number;
  casesServed: number;
  /** Times between two reviews, and those in which nothing lacked. */
  times: number;
  timesServed: number;
  /** Pieces on the shelf at the end of a day, on average. */
  meanStock: number;
  /** Pieces thrown away past their use-by. */
  pastUseBy: number;
  orders: number;
  ordered: number;
  /** Pieces: begun with + received = served + pastUseBy + left. */
  begunWith: number;
  received: number;
  left: number;
  /** The shelf at the end of every seventh day. */
  weeks: number[];
}

export interface Backtest {
  days: number;
  reorder: Replayed;
  par: Replayed;
  /** Reviews at which the record said too little yet, so that the par level was ordered. */
  notEstablished: number;
}

/**
 * Replays a record day by day, beside a plain par level. A day goes: what was ordered comes, what is past its use-by goes,
 * cases take, first expired first; on a review day orders are made at its end, from what was known by then.
 */
export function backtest({ record, warmUpDays, rule, par }: BacktestQuestion): Backtest {
  const uses = [...record.uses].sort((a, b) => a.day - b.day);
  const question = { uses, days: record.days, warmUpDays, rule, par };
  const byPar = (shelf: Shelf) => packs(par - sum(shelf.lots) - sum(shelf.coming), rule.packOf);
  let notEstablished = 0;
  const levelsKnown = relearning(uses, rule);
  const byReorder = (shelf: Shelf, day: number) => {
    const levels = levelsKnown(day);
    if (levels !== null) return orderAt(levels, standingOn(day, shelf, uses, rule)).order;
    notEstablished += 1;
    return byPar(shelf);
  };
  const reorder = replay(question, byReorder);
  return { days: record.days - warmUpDays, reorder, par: replay(question, byPar), notEstablished };
}

/** Levels are worked out anew after so many days. */
const LEARN_EVERY_DAYS = 28;

/** The levels by what was known on a day, of the days before and of it; `null` where that says too little. */
function relearning(uses: readonly Use[], rule: RestockRule): (day: number) => Levels | null {
  let kept: { day: number; levels: Levels | null } | null = null;
  return (day) => {
    if (kept === null || day - kept.day >= LEARN_EVERY_DAYS) {
      const known = { days: day + 1, uses: uses.filter((use) => use.day <= day) };
      const learning = learn(known, rule.alpha);
      kept = {
        day,
        levels: learning.outcome === 'learned' ? levelsBy(learning.learned.model, known.uses, rule) : null,
      };
    }
    return kept.levels;
  };
}

function levelsBy(model: DemandModel, uses: readonly Use[], rule: RestockRule): Levels {
  const coverDays = rule.leadDays + rule.reviewDays;
  const goodFor = rule.shelfLifeDays === null ? null : rule.leadDays + rule.shelfLifeDays;
  const unbooked = (days: number) => unbookedDemand({ model, uses }, days, rule.leadSdDays).demand;
  return levelsOf({
    cover: unbooked(coverDays),
    coverDays,
    service: rule.service,
    untilUseBy: goodFor === null ? null : { demand: unbooked(goodFor), days: goodFor },
    sureOfUse: rule.sureOfUse,
  });
}

function standingOn(day: number, { lots, coming }: Shelf, uses: readonly Use[], rule: RestockRule): Standing {
  const until = day + rule.leadDays + rule.reviewDays;
  let committed = 0;
  for (let at = firstAfter(uses, day); at < uses.length; at += 1) {
    const use = uses[at];
    if (!use || use.day > until) break;
    if (use.day - (use.bookedDaysBefore ?? 0) <= day) committed += use.pieces;
  }
  return {
    lots: lots.map(({ pieces, lastDay }) => ({ pieces, daysLeft: lastDay === null ? null : lastDay - day })),
    onOrder: sum(coming),
    committed,
    toRefill: 0,
    packOf: rule.packOf,
  };
}

/** Where the uses after a day begin; they are in order of days. */
function firstAfter(uses: readonly Use[], day: number): number {
  let [low, high] = [0, uses.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((uses[middle]?.day ?? 0) <= day) low = middle + 1;
    else high = middle;
  }
  return low;
}

interface Shelf {
  /** First expired first; `lastDay` is the last day they are good for. */
  lots: { pieces: number; lastDay: number | null }[];
  coming: { pieces: number; day: number }[];
}

interface Replay {
  /** In order of days. */
  uses: readonly Use[];
  days: number;
  warmUpDays: number;
  rule: RestockRule;
  par: number;
}

function replay(
  { uses, days, warmUpDays, rule, par }: Replay,
  decide: (shelf: Shelf, day: number) => number,
): Replayed {
  const lastDay = (day: number) => (rule.shelfLifeDays === null ? null : day + rule.shelfLifeDays);
  const shelf: Shelf = { lots: par > 0 ? [{ pieces: par, lastDay: lastDay(warmUpDays) }] : [], coming: [] };
  const all: Replayed = {
    ...{
      asked: 0,
      served: 0,
      cases: 0,
      casesServed: 0,
      times: 0,
      timesServed: 0,
      meanStock: 0,
      pastUseBy: 0,
    },
    ...{ orders: 0, ordered: 0, begunWith: par, received: 0, left: 0, weeks: [] },
  };
  let next = uses.findIndex(({ day }) => day >= warmUpDays);
  if (next < 0) next = uses.length;
  let stockDays = 0;
  let lacked = false;
  for (let day = warmUpDays; day < days; day += 1) {
    all.received += receive(shelf, day, lastDay(day));
    all.pastUseBy += throwAway(shelf, day);
    for (let use = uses[next]; use?.day === day; next += 1, use = uses[next]) {
      const got = take(shelf, use.pieces);
      all.asked += use.pieces;
      all.served += got;
      all.cases += 1;
      if (got === use.pieces) all.casesServed += 1;
      else lacked = true;
    }
    const held = sum(shelf.lots);
    stockDays += held;
    const since = day - warmUpDays + 1;
    if (since % PERIOD_DAYS === 0) all.weeks.push(held);
    if (since % rule.reviewDays !== 0) continue;
    all.times += 1;
    if (!lacked) all.timesServed += 1;
    lacked = false;
    const pieces = decide(shelf, day);
    if (pieces === 0) continue;
    all.orders += 1;
    all.ordered += pieces;
    // made at the end of the day: what takes no time is there the next morning
    shelf.coming.push({ pieces, day: day + Math.max(1, rule.leadDays) });
  }
  const replayedDays = days - warmUpDays;
  return { ...all, left: sum(shelf.lots), meanStock: replayedDays > 0 ? stockDays / replayedDays : 0 };
}

function receive(shelf: Shelf, day: number, lastDay: number | null): number {
  const come = shelf.coming.filter((one) => one.day <= day);
  shelf.coming = shelf.coming.filter((one) => one.day > day);
  for (const { pieces } of come) shelf.lots.push({ pieces, lastDay });
  return sum(come);
}

function throwAway(shelf: Shelf, day: number): number {
  const past = shelf.lots.filter(({ lastDay }) => lastDay !== null && lastDay < day);
  shelf.lots = shelf.lots.filter(({ lastDay }) => lastDay === null || lastDay >= day);
  return sum(past);
}

/** Takes what there is, first expired first: lots come in the order they run out. */
function take(shelf: Shelf, pieces: number): number {
  let got = 0;
  for (const lot of shelf.lots) {
    const taken = Math.min(lot.pieces, pieces - got);
    lot.pieces -= taken;
    got += taken;
  }
  shelf.lots = shelf.lots.filter((lot) => lot.pieces > 0);
  return got;
}

const sum = (heaps: readonly { pieces: number }[]) => heaps.reduce((all, { pieces }) => all + pieces, 0);
const packs = (lacking: number, packOf: number) => Math.ceil(Math.max(0, lacking) / packOf) * packOf;
