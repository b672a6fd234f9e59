import writeWorkbook from 'write-excel-file/universal';
import { FIELD_HEADINGS } from './fields';
import { SAMPLE_COLUMNS, type SampleRow } from './sample';

const DAY_MS = 86_400_000;
const WIDE = 24;

/** The sample as a workbook: days and times as a spreadsheet keeps them, texts as texts, which nothing works out. */
export async function sampleXlsx(rows: readonly SampleRow[]): Promise<Uint8Array> {
  const heading = SAMPLE_COLUMNS.map(({ field }) => ({
    value: FIELD_HEADINGS[field],
    type: String,
    fontWeight: 'bold' as const,
  }));
  const lines = rows.map((row) =>
    SAMPLE_COLUMNS.map(({ field }) => {
      switch (field) {
        case 'date':
          return { value: new Date(`${row.date}T00:00:00Z`), type: Date, format: 'yyyy-mm-dd' };
        case 'start':
          return { value: row.start / (DAY_MS / 60_000), type: Number, format: 'hh:mm' };
        case 'minutes':
          return { value: row.minutes, type: Number };
        default:
          return { value: row[field], type: String };
      }
    }),
  );
  const columns = SAMPLE_COLUMNS.map(({ text }) => ({ width: text ? WIDE : WIDE / 2 }));
  const book = writeWorkbook([heading, ...lines], { sheet: 'Theatre list', columns, stickyRowsCount: 1 });
  return new Uint8Array(await (await book.toBlob()).arrayBuffer());
}
