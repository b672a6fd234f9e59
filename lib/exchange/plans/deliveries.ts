import { groupBy } from '../../lists/groupBy';
import { textProblems } from '../../plans/checkConstruct';
import { type PlainDate, plainDate } from '../../quantities/plainDate';
import { type DeliveryLine, delivery, lineProblems } from '../../stock/delivery';
import { exchangeRules as words } from '../../wording/exchange-rules';
import { deliveryWords } from '../../wording/stock-acts';
import { NONE } from '../list';
import { type Planned, type RowOutcome, ruleProblem } from '../outcome';
import type { CellProblem, SettledRow } from '../readRows';
import { codeKey } from './catalogue';
import { itemFinder, type NamedItem } from './itemOf';

type Line = Omit<DeliveryLine, 'id' | 'scanId' | 'useByReadAgain'>;

export interface DeliveriesFacts {
  items: readonly NamedItem[];
  places: readonly { id: string; name: string; inUse: boolean }[];
  /** Received ones with the numbers of the file. */
  received: readonly {
    id: string;
    supplier: string;
    reference: string;
    arrivedOn: string;
    lines: readonly Line[];
  }[];
  lotUnderRecall: (itemId: string, lot: string | null) => boolean;
  useBysOfLot: (itemId: string, lot: string | null) => readonly (PlainDate | null)[];
  /** The hospital's own day. */
  today: PlainDate;
}

export interface DeliveryWork {
  supplier: string;
  reference: string;
  arrivedOn: string;
  lines: Line[];
}

const MOST_LINES = 200;
const NEEDED = [
  'supplier',
  'reference',
  'arrivedOn',
  'form',
  'lot',
  'useBy',
  'count',
  'unit',
  'owner',
  'place',
];

/** What receiving the deliveries of the file would do, delivery by delivery. */
export function planDeliveries(rows: readonly SettledRow[], facts: DeliveriesFacts): Planned<DeliveryWork> {
  const outcomes: RowOutcome<DeliveryWork>[] = [];
  const problems: CellProblem[] = [];
  const readable = rows.filter(({ cells }) => NEEDED.every((key) => (cells[key] ?? '') !== ''));
  const notes = groupBy(
    readable,
    ({ cells }) => `${codeKey(cells.supplier ?? '')}\n${codeKey(cells.reference ?? '')}`,
  );
  const find = itemFinder(facts.items);
  for (const own of notes.values()) {
    const one = planDelivery(own, facts, find);
    problems.push(...one.problems);
    if (one.outcome) outcomes.push(one.outcome);
  }
  return { outcomes, problems };
}

function planDelivery(
  rows: readonly SettledRow[],
  facts: DeliveriesFacts,
  find: ReturnType<typeof itemFinder>,
): { outcome: RowOutcome<DeliveryWork> | null; problems: CellProblem[] } {
  const [first] = rows;
  if (!first) return { outcome: null, problems: [] };
  const { supplier = '', reference = '' } = first.cells;
  const arrivedOn = plainDate.parse(first.cells.arrivedOn);
  const problems: CellProblem[] = [];
  const add = (row: number, column: string | null, code: string, sentence: string) =>
    problems.push(ruleProblem(row, column, code, sentence));
  const read = rows.flatMap((row) => {
    const line = lineOf(row, facts, find, problems);
    return line ? [{ row: row.row, ...line }] : [];
  });
  if (problems.length > 0 || read.length < rows.length) return { outcome: null, problems };
  const lines = read.map(({ line }) => line);
  const received = facts.received.find(
    (one) => codeKey(one.supplier) === codeKey(supplier) && codeKey(one.reference) === codeKey(reference),
  );
  if (received) {
    const isSame = received.arrivedOn === arrivedOn && sameLines(received.lines, lines, facts.items);
    if (!isSame) add(first.row, 'reference', 'received-before', words.deliveryDiffers(reference));
  } else {
    if (rows.some(({ cells }) => cells.arrivedOn !== arrivedOn))
      add(first.row, 'arrivedOn', 'arrived-differs', words.arrivedDiffers(reference));
    if (lines.length > MOST_LINES)
      add(first.row, 'reference', 'too-long', words.deliveryTooLong(reference, MOST_LINES));
    if (arrivedOn > facts.today) add(first.row, 'arrivedOn', 'in-the-future', deliveryWords.inTheFuture);
    for (const { code, message } of textProblems(supplier, [])) add(first.row, 'supplier', code, message);
    for (const { code, message } of textProblems(reference, [])) add(first.row, 'reference', code, message);
    problems.push(...shapeProblems({ supplier, reference, arrivedOn, lines }, rows));
    read.forEach(({ row, line, item, placeInUse }, at) => {
      const known = {
        item,
        placeInUse,
        // a list names no owner: whose a consigned piece is, is stated afterwards
        ownerInUse: true,
        lotUnderRecall: facts.lotUnderRecall(line.itemId, line.lot),
        useBysOfLot: facts.useBysOfLot(line.itemId, line.lot),
      };
      for (const { path, code, message } of lineProblems(asSent(line, at), known, { at, arrivedOn }))
        add(row, COLUMN_OF[String(path.at(-1))] ?? null, code, message);
    });
  }
  if (problems.length > 0) return { outcome: null, problems };
  return {
    outcome: {
      rows: rows.map(({ row }) => row),
      kind: received ? 'unchanged' : 'new',
      name: `${reference} of ${supplier}, ${lines.length === 1 ? 'one line' : `${lines.length} lines`}`,
      id: received?.id ?? null,
      revision: null,
      changes: [],
      remarks: [],
      work: { supplier, reference, arrivedOn, lines },
    },
    problems: [],
  };
}

const COLUMN_OF: Record<string, string> = {
  itemId: 'item',
  placeId: 'place',
  lot: 'lot',
  useBy: 'useBy',
  count: 'count',
};

const asSent = (line: Line, at: number): DeliveryLine =>
  ({ ...line, id: `deliveryLine_${at}`, scanId: null, useByReadAgain: false }) as DeliveryLine;

/** What the screen's own schema says of lengths and bounds. */
function shapeProblems(work: DeliveryWork, rows: readonly SettledRow[]): CellProblem[] {
  const parsed = delivery.safeParse({
    ...work,
    id: 'delivery_new',
    lines: work.lines.slice(0, MOST_LINES).map(asSent),
  });
  if (parsed.success) return [];
  return parsed.error.issues.map(({ path, message }) => {
    const [top, at, member] = path;
    const row = top === 'lines' && typeof at === 'number' ? rows[at]?.row : rows[0]?.row;
    const column = top === 'lines' ? (COLUMN_OF[String(member)] ?? String(member)) : String(top);
    return ruleProblem(
      row ?? 0,
      column,
      'out-of-bounds',
      `${message.charAt(0).toUpperCase()}${message.slice(1)}.`,
    );
  });
}

interface LineRead {
  line: Line;
  item: NamedItem;
  placeInUse: boolean;
}

function lineOf(
  settled: SettledRow,
  { places }: DeliveriesFacts,
  find: ReturnType<typeof itemFinder>,
  problems: CellProblem[],
): LineRead | null {
  const { row, cells } = settled;
  const found = find(settled);
  const place = places.find(({ name }) => codeKey(name) === codeKey(cells.place ?? ''));
  if (found.item === null) problems.push(found.problem);
  if (!place)
    problems.push(
      ruleProblem(row, 'place', 'no-such-place', words.noSuchPlace(cells.place ?? ''), cells.place),
    );
  if (found.item === null || !place) return null;
  const line = {
    itemId: found.item.id,
    form: cells.form,
    lot: cells.lot === NONE ? null : cells.lot,
    useBy: cells.useBy === NONE ? null : cells.useBy,
    count: Number(cells.count),
    unit: cells.unit,
    placeId: place.id,
    owner: cells.owner,
    lenderId: null,
    held: cells.held || null,
    orderLineId: null,
  } as Line;
  return { line, item: found.item, placeInUse: place.inUse };
}

/** The same lines in whatever order; a pack of one piece is a piece. */
function sameLines(one: readonly Line[], other: readonly Line[], items: readonly NamedItem[]): boolean {
  const single = new Set(items.flatMap(({ id, packMultiple }) => (packMultiple === 1 ? [id] : [])));
  const texts = (lines: readonly Line[]) =>
    lines
      .map(({ itemId, form, lot, useBy, count, unit, placeId, owner, held }) =>
        JSON.stringify([
          itemId,
          form,
          lot,
          useBy,
          count,
          single.has(itemId) ? 'pieces' : unit,
          placeId,
          owner,
          held,
        ]),
      )
      .sort();
  return JSON.stringify(texts(one)) === JSON.stringify(texts(other));
}
