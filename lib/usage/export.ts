import { CSV_MARK, csvLine } from '../lists/csv';
import { writeMm } from '../quantities/length';
import { NO_REASON } from '../wording/reasons';
import { OPENING_BAR_WORDS, outcomeWords, placeWords } from '../wording/usage';
import type { DelayLine, RecordLine } from './lines';

/** What stands over the lines: the case by its reference alone, no patient. */
export interface ExportHead {
  reference: string;
  caseDate: string;
  planVersion: number | null;
  closed: { at: string; by: string } | null;
  /** Sentences: other than planned, and open as it was closed or now. */
  differences: readonly string[];
  open: readonly string[];
  delays: readonly DelayLine[];
  exportedAt: string;
}

const COLUMNS = [
  'case',
  'case date',
  'outcome',
  'quantity',
  'item',
  'item name',
  'GTIN',
  'length mm',
  'place in the plan',
  'lot',
  'lot is',
  'use-by',
  'set',
  'sterile pack',
  'load',
  'opened although',
  'note',
  'entered after closing because',
  'done at',
  'entered at',
  'by',
  'taken back at',
  'taken back by',
  'taken back because',
  'record closed at',
  'entry',
  'reason code',
  'reason for waste',
] as const;

const LOT_IS: Record<RecordLine['lotIs'], string> = {
  read: 'read at the table',
  asIssued: 'as issued',
  setAndLoad: 'not available: set and load',
};

/** The lines as CSV, one an entry; those taken back among them, with when and why. */
export function csvOfUse(head: ExportHead, lines: readonly RecordLine[]): string {
  const rows = lines.map((line) =>
    csvLine([
      head.reference,
      head.caseDate,
      outcomeWords(line.outcome, line.lostAt, line.reusable),
      String(line.quantity),
      line.itemCode,
      line.itemName,
      line.gtin ?? '',
      line.lengthUm === null ? '' : writeMm(line.lengthUm),
      line.place === null ? '' : placeWords(line.place),
      line.lot ?? '',
      LOT_IS[line.lotIs],
      line.useBy ?? '',
      line.setCode ?? '',
      line.packNumber ?? '',
      line.load ?? '',
      line.despite.map((bar) => OPENING_BAR_WORDS[bar]).join(', '),
      line.note ?? '',
      line.because ?? '',
      line.doneAt,
      line.enteredAt,
      line.by,
      line.takenBack?.at ?? '',
      line.takenBack?.by ?? '',
      line.takenBack?.because ?? '',
      head.closed?.at ?? '',
      line.entryId,
      line.reason?.code ?? '',
      line.reason?.words ?? (line.waste ? NO_REASON : ''),
    ]),
  );
  return CSV_MARK + csvLine(COLUMNS) + rows.join('');
}

/** The whole record as JSON, for a program. */
export const jsonOfUse = (head: ExportHead, lines: readonly RecordLine[]): string =>
  JSON.stringify({ format: 'record-of-use/1', ...head, lines }, null, 2);
