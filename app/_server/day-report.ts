import 'server-only';
import { listStock } from '@/db/queries/stock';
import { dayReportFacts, nextOperatingDay } from '@/db/queries/theatre/dayReportFacts';
import { plannedItems } from '@/db/queries/theatre/plannedItems';
import { packItems } from '@/db/queries/theatre/theatreDay';
import type { ItemId } from '@/lib/identity/ids';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { type DayReport, dayReport } from '@/lib/theatre/report/dayReport';
import type { ReportNames } from '@/lib/wording/day-report';
import { type ChangedDay, changedDay } from './changed-day';
import { now } from './clock';
import type { Access } from './session';
import { plannedList } from './theatre-planning';

export type ReportKind = 'morning' | 'dayBefore';

/** A report as its page and its paper show it. */
export interface ReportOfDay {
  kind: ReportKind;
  today: PlainDate;
  report: DayReport;
  names: ReportNames;
  changed: ChangedDay;
}

/** The day a report is of: as asked for, or else today for the morning and the next operating day for the day before. */
export async function dayOfReport(
  db: Access['db'],
  kind: ReportKind,
  asked: string | null,
): Promise<PlainDate> {
  const today = wallClock(now()).date;
  const stated = plainDate.safeParse(asked);
  if (stated.success) return stated.data;
  return kind === 'morning' ? today : nextOperatingDay(db, today);
}

/** The report of a day as things stand now, with what changed since the reader last marked that day as seen. */
export async function reportOfDay(
  { db, person }: Pick<Access, 'db' | 'person'>,
  kind: ReportKind,
  asked: string | null,
): Promise<ReportOfDay> {
  const at = now();
  const today = wallClock(at).date;
  const day = await dayOfReport(db, kind, asked);
  const [changed, { facts: planning, answer }, facts, heaps] = await Promise.all([
    changedDay({ db, person }, kind, day),
    plannedList(db),
    dayReportFacts(db, day, at),
    packItems(db),
  ]);
  const { items, ...rest } = facts;
  const tomorrow =
    kind === 'morning'
      ? null
      : {
          planned: await plannedItems(
            db,
            facts.cases.filter(({ cancelled }) => cancelled === null).map(({ id }) => id),
          ),
          shelf: await listStock(db),
        };
  const item = (id: ItemId) => items.get(id)?.name ?? id;
  return {
    kind,
    today,
    report: dayReport({ now: at, day, planning, answer, ...rest }, tomorrow),
    names: {
      now: at,
      item,
      pouch: (stock) => {
        const id = heaps.get(stock);
        return id === undefined ? 'a pouch' : item(id as ItemId);
      },
    },
    changed,
  };
}
