import { exportLine } from '@/lib/ledger/exportFile';
import { CSV_MARK, csvLine } from '@/lib/lists/csv';
import { actWords } from '@/lib/wording/ledger-acts';
import { readLedger } from '../../ledger';
import { mayRead, type Reading } from '../../reader';
import { type LedgerFilter, readLedgerPage } from './entries';

/** The whole ledger as the stand-alone verifier reads it, some entries at a time. */
export async function* exportLines(db: Reading): AsyncGenerator<string> {
  mayRead(db, 'readLedger');
  let text = '';
  for await (const row of readLedger(db.read)) {
    text += exportLine(row);
    if (text.length > 64 * 1024) {
      yield text;
      text = '';
    }
  }
  if (text !== '') yield text;
}

const COLUMNS = [
  'entry',
  'done at',
  'entered at',
  'person',
  'person id',
  'act',
  'act in words',
  'of',
  'of id',
  'of kind',
  'corrects entry',
  'detail',
  'hash',
];
const AT_ONCE = 500;

/** Entries as CSV, the newest first. */
export async function* exportCsv(db: Reading, filter: LedgerFilter): AsyncGenerator<string> {
  mayRead(db, 'readLedger');
  yield CSV_MARK + csvLine(COLUMNS);
  for (let before: number | null = null; ; ) {
    const page = await readLedgerPage(db, filter, { before, limit: AT_ONCE });
    yield page.rows
      .map(({ seq, doneAt, enteredAt, person, action, subject, corrects, detailText, hash }) =>
        csvLine([
          String(seq),
          doneAt,
          enteredAt,
          person?.name ?? '',
          person?.id ?? '',
          action,
          actWords(action),
          subject.label ?? '',
          subject.id,
          subject.kind,
          corrects === null ? '' : String(corrects.seq),
          detailText,
          hash,
        ]),
      )
      .join('');
    if (page.older === null) return;
    before = page.older;
  }
}
