import { and, eq, gt, isNull, min } from 'drizzle-orm';
import type { Item } from '@/lib/catalogue/item';
import { type ItemId, setId } from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import { addDays, type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import type { HeldLine } from '@/lib/sets/holdings';
import { unmetMustHaves } from '@/lib/sets/standing';
import type { DayReportFacts, DaySetFacts } from '@/lib/theatre/report/facts';
import { mayRead, type Reading } from '../../reader';
import { benchCounts, cases, loads, packs, people, sets, theatreSessions } from '../../schema';
import { isOpen } from '../bench/turnCounts';
import { loadWorkQueue } from '../turns/workQueue';
import { theatreDay } from './theatreDay';

/** What a report of a day rests on beside the plan of who gets which set, with every item by its id. */
export async function dayReportFacts(
  db: Reading,
  day: PlainDate,
  now: string,
): Promise<Pick<DayReportFacts, 'cases' | 'sets'> & { items: ReadonlyMap<ItemId, Item> }> {
  mayRead(db, 'readHospital');
  const [listed, queue, inLoads, counted] = await Promise.all([
    theatreDay(db, day),
    loadWorkQueue(db, now),
    db.read
      .select({ setId: sets.id, id: loads.id, number: loads.number })
      .from(sets)
      .innerJoin(packs, eq(packs.id, sets.packId))
      .innerJoin(loads, eq(loads.id, packs.loadId)),
    db.read
      .select({ setId: benchCounts.setId, by: people.name, beganAt: benchCounts.beganAt })
      .from(benchCounts)
      .innerJoin(people, eq(people.id, benchCounts.personId))
      .where(isOpen),
  ]);
  const loadOf = new Map(inLoads.map(({ setId: id, ...load }) => [id, load]));
  const countOf = new Map(counted.map(({ setId: id, ...count }) => [id, count]));
  const actOf = new Map(queue.lines.map(({ line }) => [line.setId, line.act]));
  return {
    cases: listed.cases,
    items: queue.items,
    sets: queue.all.map(({ set, standing }): DaySetFacts => {
      const load = loadOf.get(set.id);
      return {
        id: setId.parse(set.id),
        code: set.code,
        configuration: set.configuration.name,
        step: set.step,
        since: set.stepSince,
        heldBecause: set.heldBecause,
        useBy: set.useBy === null ? null : plainDate.parse(set.useBy),
        act: actOf.get(set.id) ?? null,
        load: load ?? null,
        count: countOf.get(set.id) ?? null,
        stops: standing.stops,
        screws: screwsIn(set.lines, queue.items),
        mustHaveShort: unmetMustHaves(standing, 1) + unmetMustHaves(standing, 2) > 0,
      };
    }),
  };
}

type Items = ReadonlyMap<ItemId, Item>;
const screwsBefore = new WeakMap<readonly HeldLine[], { items: Items; screws: DaySetFacts['screws'] }>();

/** Of lines that are the very same, as those of most sets are, told once; nobody may change it. */
function screwsIn(lines: readonly HeldLine[], items: Items): DaySetFacts['screws'] {
  const before = screwsBefore.get(lines);
  if (before?.items === items) return before.screws;
  const screwLines = lines.filter(({ itemId }) => items.get(itemId)?.kind === 'screw');
  const screws = new Map(
    [...groupBy(screwLines, ({ itemId }) => itemId)].map(([itemId, of]) => [
      itemId,
      {
        found: of.some(({ found }) => found === null)
          ? null
          : of.reduce((sum, { found }) => sum + (found ?? 0), 0),
        minimum: of.reduce((sum, line) => sum + line.minimum, 0),
      },
    ]),
  );
  screwsBefore.set(lines, { items, screws });
  return screws;
}

/** The next day after this one on which any theatre has a session or a case; the day after it where none is booked at all. */
export async function nextOperatingDay(db: Reading, after: PlainDate): Promise<PlainDate> {
  mayRead(db, 'readHospital');
  const [[session], [booked]] = await Promise.all([
    db.read
      .select({ day: min(theatreSessions.sessionDate) })
      .from(theatreSessions)
      .where(gt(theatreSessions.sessionDate, after)),
    db.read
      .select({ day: min(cases.caseDate) })
      .from(cases)
      .where(and(gt(cases.caseDate, after), isNull(cases.cancelledAt))),
  ]);
  const days = [session?.day, booked?.day].filter((day): day is string => typeof day === 'string').sort();
  return days[0] === undefined ? addDays(after, 1) : plainDate.parse(days[0]);
}
