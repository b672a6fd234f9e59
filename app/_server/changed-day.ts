import 'server-only';
import { newestEntry } from '@/db/queries/ledgerHead';
import { entriesSince, lastLook } from '@/db/queries/theatre/dayLook';
import { type SeenNow, seenNow } from '@/db/queries/theatre/seenNow';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { standings } from '@/lib/theatre/planning/standing';
import { attributed } from '@/lib/theatre/report/attribution';
import { changesSince } from '@/lib/theatre/report/changes';
import type { DayView, SeenCase } from '@/lib/theatre/report/seen';
import { type ChangeLine, changeLines } from '@/lib/wording/day-changes';
import { now } from './clock';
import type { Access } from './session';
import { plannedList } from './theatre-planning';

/** What a day's page shows of changes, and what it sends back when its reader marks it as seen. */
export interface ChangedDay {
  look: { view: DayView; shownAt: string } | null;
  lines: ChangeLine[];
  mark: { view: DayView; day: PlainDate; shownAt: string; ledgerSeq: number; seen: SeenCase[] };
}

/** What changed on a day since this person last marked it as seen. */
export async function changedDay(
  { db, person }: Pick<Access, 'db' | 'person'>,
  view: DayView,
  day: PlainDate,
): Promise<ChangedDay> {
  // the moment and the entry are asked before what is shown is read: what is written in between is news once more
  const shownAt = now();
  const head = await newestEntry(db);
  const [look, { facts, answer }] = await Promise.all([lastLook(db, person.id, view, day), plannedList(db)]);
  const present: SeenNow[] = await seenNow(
    db,
    day,
    (look?.seen ?? []).map(({ id }) => id),
    { standing: standings(facts, answer), now: facts.now },
  );
  const ofDay = present.filter(({ caseDate }) => caseDate === day).map(({ seen }) => seen);
  const mark = { view, day, shownAt, ledgerSeq: head?.seq ?? 0, seen: ofDay };
  if (look === null) return { look, lines: [], mark };
  const changes = changesSince(
    look.seen,
    present.map(({ seen }) => seen),
    { toldFrom: facts.rule.marginMinutes, day },
  );
  const things = new Set(
    changes.cases
      .flatMap(({ caseId, sets }) => [caseId as string, ...sets.map(({ id }) => id as string)])
      .concat(changes.orders.flatMap(({ caseIds }) => caseIds)),
  );
  const entries = await entriesSince(db, look.ledgerSeq, [...things]);
  return {
    look: { view: look.view, shownAt: look.shownAt },
    lines: changeLines(attributed(changes, entries), shownAt),
    mark,
  };
}
