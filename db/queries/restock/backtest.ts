import { setImmediate as turnOfTheLoop } from 'node:timers/promises';
import { asc, inArray, sql } from 'drizzle-orm';
import { type Backtest, backtest } from '@/lib/restock/backtest';
import type { ItemToRestock } from '@/lib/restock/proposal';
import type { SettingValue } from '@/lib/settings/local';
import { wallClock } from '@/lib/theatre/localTime';
import type { Database } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { items } from '../../schema';
import { restockFacts } from './facts';

/** What the settings would have done of one item over the record. */
export interface BacktestedItem {
  itemId: string;
  code: string;
  name: string;
  kind: string;
  mustHaveClass: number | null;
  service: number;
  unitPence: number | null;
  par: number;
  result: Backtest;
}

export interface BacktestOnScreen {
  from: string | null;
  days: number;
  warmUpDays: number;
  settings: SettingValue<'restock'>;
  items: BacktestedItem[];
  /** Items that were used, but could not be replayed: nobody has said how long they take to come. */
  withoutLead: number;
}

/** Half a year is learned from before the replay begins, or half of the record where it is shorter. */
const WARM_UP_DAYS = 182;
/** A record of fewer days says too little: a quarter to learn from, and as much to replay. */
const LEAST_DAYS = 182;
const TURN_MS = 25;

const kept = new WeakMap<Database['read'], { stamp: string; tested: BacktestOnScreen }>();

/**
 * Replays the whole record of every item that was used, with the settings as they are now, beside a plain par level. Kept
 * until anything it rests on is another: the day, the journal, settings, terms, the catalogue or what sets should hold.
 */
export async function backtestAll(db: Reading, now: string): Promise<BacktestOnScreen> {
  mayRead(db, 'readHospital');
  const [row] = await db.read.all<{ stamp: string }>(
    sql`SELECT (SELECT coalesce(max(seq), 0) FROM piece_moves)
      || '/' || (SELECT coalesce(sum(revision), 0) FROM settings WHERE key = 'restock')
      || '/' || (SELECT count(*) || '-' || coalesce(sum(revision), 0) FROM supply_terms)
      || '/' || (SELECT count(*) || '-' || coalesce(sum(revision), 0) FROM items)
      || '/' || (SELECT count(*) || '-' || coalesce(sum(revision), 0) FROM configuration_versions) AS stamp`,
  );
  const stamp = `${wallClock(now).date}/${row?.stamp ?? ''}`;
  const before = kept.get(db.read);
  if (before?.stamp === stamp) return before.tested;
  const tested = await testAll(db, now);
  kept.set(db.read, { stamp, tested });
  return tested;
}

async function testAll(db: Reading, now: string): Promise<BacktestOnScreen> {
  const { settings, items: all, from } = await restockFacts(db, now);
  const used = all.filter(({ record }) => record.uses.length > 0);
  const days = used[0]?.record.days ?? all[0]?.record.days ?? 0;
  const warmUpDays = Math.min(WARM_UP_DAYS, Math.floor(days / 2));
  const known = used.filter(({ terms }) => terms.leadDays !== null);
  const names =
    known.length === 0
      ? []
      : await db.read
          .select({ id: items.id, code: items.code, name: items.name, kind: items.kind })
          .from(items)
          .where(
            inArray(
              items.id,
              known.map(({ itemId }) => itemId),
            ),
          )
          .orderBy(asc(items.code));
  const found: BacktestedItem[] = [];
  const withLead = { from, days, warmUpDays, settings, withoutLead: used.length - known.length };
  if (days < LEAST_DAYS) return { ...withLead, items: [] };
  const byId = new Map<string, ItemToRestock>(known.map((item) => [item.itemId, item]));
  let turn = performance.now();
  for (const { id, ...named } of names) {
    const item = byId.get(id);
    if (item?.terms.leadDays == null) continue;
    found.push({ ...named, itemId: id, ...replayed(item, item.terms.leadDays, warmUpDays, settings) });
    if (performance.now() - turn < TURN_MS) continue;
    await turnOfTheLoop();
    turn = performance.now();
  }
  return { ...withLead, items: found };
}

function replayed(
  { record, terms, packOf, mustHaveClass, unitPence }: ItemToRestock,
  leadDays: number,
  warmUpDays: number,
  settings: SettingValue<'restock'>,
) {
  const learned = record.uses.filter(({ day }) => day < warmUpDays);
  const perWeek = learned.reduce((sum, { pieces }) => sum + pieces, 0) / (warmUpDays / 7);
  const par = Math.max(1, Math.ceil(perWeek * settings.parWeeks));
  const result = backtest({
    record,
    warmUpDays,
    par,
    rule: {
      leadDays,
      leadSdDays: terms.leadSdDays,
      reviewDays: terms.reviewDays,
      service: terms.service,
      packOf,
      shelfLifeDays: terms.shelfLifeDays,
      sureOfUse: settings.sureOfUsePercent / 100,
      alpha: settings.alphaPercent / 100,
    },
  });
  return { mustHaveClass, service: terms.service, unitPence, par, result };
}
