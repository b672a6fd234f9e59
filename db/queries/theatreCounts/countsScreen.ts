import { and, asc, eq, inArray, isNull } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import { type CountMoment, countMoment, type TheatreEntry } from '@/lib/theatreCounts/act';
import { type Reckoned, reckon } from '@/lib/theatreCounts/reckon';
import { theatreStateOf } from '@/lib/theatreCounts/state';
import { mayRead, type Reading } from '../../reader';
import { casePicks, configurationLines, items, people, theatreCounts } from '../../schema';
import { countSubjectOf, theatreEntriesOf } from './counted';
import { questionsOfCase, type TheatreQuestion } from './questions';

/** A line as two people count it: what is expected is not among it. */
export interface CountLine {
  setId: string;
  lineId: string;
  name: string;
  code: string;
  layer: number;
  place: string;
  implant: boolean;
}

export interface OpenTheatreCount {
  id: string;
  moment: CountMoment;
  personId: string;
  by: string;
  beganAt: string;
  entries: TheatreEntry[];
  sets: { id: string; code: string; lines: CountLine[]; countedFirst: boolean }[];
  /** Items added at the count before, which are counted again. */
  addedBefore: { key: string; name: string }[];
  /** Single packs that went out for the case: the likeliest to be added. */
  packs: { itemId: string; name: string }[];
}

export interface CountsScreen {
  inTheatre: { id: string; code: string }[];
  open: OpenTheatreCount | null;
  closed: {
    id: string;
    moment: CountMoment;
    by: string;
    with: string;
    at: string;
    figures: Reckoned[];
    notOpened: string[];
  }[];
  questions: TheatreQuestion[];
}

const IMPLANTS = new Set(['plate', 'screw', 'washer']);

/** The counts in theatre of a case: the one that is open, those that are closed, and what stays open. */
export async function countsScreen(db: Reading, caseId: string): Promise<CountsScreen> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const second = alias(people, 'second');
  const [rows, questions, first, final] = await Promise.all([
    read
      .select({ count: theatreCounts, by: people.name, second: second.name })
      .from(theatreCounts)
      .innerJoin(people, eq(people.id, theatreCounts.personId))
      .leftJoin(second, eq(second.id, theatreCounts.secondPersonId))
      .where(and(eq(theatreCounts.caseId, caseId), isNull(theatreCounts.abandonedAt)))
      .orderBy(asc(theatreCounts.beganAt)),
    questionsOfCase(db, caseId),
    countSubjectOf(read, caseId, 'first'),
    countSubjectOf(read, caseId, 'final'),
  ]);
  const open = rows.find(({ count }) => count.closedAt === null);
  const closed = rows.filter(({ count }) => count.closedAt !== null);
  return {
    inTheatre: first.sets,
    open: open ? await openCount(db, caseId, open) : null,
    closed: await Promise.all(
      closed.map(async ({ count, by, second: together }) => {
        const moment = countMoment.parse(count.moment);
        const state = theatreStateOf(await theatreEntriesOf(read, count.id));
        return {
          id: count.id,
          moment,
          by,
          with: together ?? '',
          at: count.closedAt ?? '',
          figures: reckon(moment === 'first' ? first : final, state),
          notOpened: first.sets.filter(({ id }) => state.notOpened.has(id)).map(({ code }) => code),
        };
      }),
    ),
    questions,
  };
}

async function openCount(
  { read }: Reading,
  caseId: string,
  { count, by }: { count: typeof theatreCounts.$inferSelect; by: string },
): Promise<OpenTheatreCount> {
  const moment = countMoment.parse(count.moment);
  const subject = await countSubjectOf(read, caseId, moment);
  const ids = [...new Set(subject.lines.map(({ lineId }) => lineId))];
  const [entries, lines, packs] = await Promise.all([
    theatreEntriesOf(read, count.id),
    read
      .select({ line: configurationLines, item: { code: items.code, kind: items.kind } })
      .from(configurationLines)
      .innerJoin(items, eq(items.id, configurationLines.itemId))
      .where(inArray(configurationLines.id, ids)),
    read
      .selectDistinct({ itemId: items.id, name: items.name })
      .from(casePicks)
      .innerJoin(items, eq(items.id, casePicks.itemId))
      .where(eq(casePicks.caseId, caseId))
      .orderBy(asc(items.name)),
  ]);
  const about = new Map(lines.map((row) => [row.line.id, row]));
  return {
    id: count.id,
    moment,
    personId: count.personId,
    by,
    beganAt: count.beganAt,
    entries,
    sets: subject.sets.map(({ id, code }) => ({
      id,
      code,
      countedFirst: subject.lines.some(
        ({ setId, lineId }) => setId === id && subject.first?.counted.has(`${setId} ${lineId}`),
      ),
      lines: subject.lines
        .filter(({ setId }) => setId === id)
        .map(({ lineId, name }): CountLine => {
          const row = about.get(lineId);
          return {
            setId: id,
            lineId,
            name,
            code: row?.item.code ?? '',
            layer: row?.line.layer ?? 0,
            place: `row ${row?.line.row ?? ''}, slot ${row?.line.slot ?? ''}`,
            implant: IMPLANTS.has(row?.item.kind ?? ''),
          };
        }),
    })),
    addedBefore: [...(subject.first?.added.values() ?? [])].map(({ key, name }) => ({ key, name })),
    packs,
  };
}
