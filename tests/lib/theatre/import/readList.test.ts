import fc from 'fast-check';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import writeWorkbook from 'write-excel-file/universal';
import { momentOfSerial } from '@/lib/lists/serial';
import { plainDate } from '@/lib/quantities/plainDate';
import { FIELD_HEADINGS, fieldOf, isAboutThePatient } from '@/lib/theatre/import/fields';
import { type FileChoices, readListFile } from '@/lib/theatre/import/readList';
import { type SampleRow, sampleCsv, sampleRows } from '@/lib/theatre/import/sample';
import { sampleXlsx } from '@/lib/theatre/import/sampleXlsx';
import { understoodWords } from '@/lib/wording/list-import';

const ASKED: FileChoices = { sheet: null, columns: {} };
const bytes = (text: string) => new TextEncoder().encode(text);
const read = (text: string, choices = ASKED) => readListFile(bytes(text), choices);
const DAY = plainDate.parse('2026-01-20');

async function rowsOf(file: Uint8Array | string, choices = ASKED) {
  const answer = await readListFile(typeof file === 'string' ? bytes(file) : file, choices);
  if (!answer.ok) throw new Error(answer.fault.code);
  return answer.list;
}
const values = (list: Awaited<ReturnType<typeof rowsOf>>) =>
  list.rows.map(({ cells }) =>
    Object.fromEntries(Object.entries(cells).map(([field, cell]) => [field, cell?.value])),
  );

describe('CSV', () => {
  const BODY = [
    ['Theatre', 'Date', 'Start'],
    ['Theatre 3, trauma', '2026-01-20', '08:30'],
    ['The "old" one', '', '09:00'],
  ];
  const quoted = (cell: string) => `"${cell.replaceAll('"', '""')}"`;

  it.each([
    [',', '\n', ''],
    [';', '\r\n', '\uFEFF'],
    ['\t', '\r\n', '\uFEFF'],
  ])('with %j between cells and %j after rows is read alike', async (separator, end, mark) => {
    const text = mark + BODY.map((cells) => cells.map(quoted).join(separator)).join(end) + end;
    const list = await rowsOf(text);
    expect(list.understood).toMatchObject({ format: 'csv', separator, columns: { headingRow: 1 } });
    expect(values(list)).toEqual([
      { theatre: 'Theatre 3, trauma', date: '2026-01-20', start: '08:30' },
      { theatre: 'The "old" one', start: '09:00' },
    ]);
    expect(list.rows.map(({ row }) => row)).toEqual([2, 3]);
  });

  it('of UTF-16 is read; of another encoding, with a broken quote or nothing in it, it is refused', async () => {
    const utf16 = new Uint8Array(Buffer.from('\uFEFFTheatre\tStart\nTheatre 1\t08:30\n', 'utf16le'));
    expect(values(await rowsOf(utf16))).toEqual([{ theatre: 'Theatre 1', start: '08:30' }]);
    const latin = new Uint8Array([...bytes('Theatre;Surgeon\nTheatre 1;J'), 0xfc, ...bytes('rgen\n')]);
    expect(await readListFile(latin, ASKED)).toEqual({ ok: false, fault: { code: 'not-text' } });
    expect(await read('Theatre,Start\n"Theatre 1,08:30\n')).toMatchObject({
      fault: { code: 'broken-quote' },
    });
    expect(await read(' \n')).toEqual({ ok: false, fault: { code: 'empty' } });
    expect(await read('Theatre,Start\n')).toEqual({ ok: false, fault: { code: 'no-rows' } });
    expect(await readListFile(new Uint8Array(), ASKED)).toEqual({ ok: false, fault: { code: 'empty' } });
  });

  it('says how large it may be', async () => {
    const many = `Theatre,Start\n${'Theatre 1,08:30\n'.repeat(501)}`;
    expect(await read(many)).toEqual({ ok: false, fault: { code: 'too-many-rows', rows: 501 } });
    expect(await read('x'.repeat(700_001))).toEqual({
      ok: false,
      fault: { code: 'too-large', bytes: 700_001 },
    });
    expect((await rowsOf(`Theatre,Start\n${'Theatre 1,08:30\n'.repeat(500)}`)).rows).toHaveLength(500);
  });

  it('knows our headings however they are spaced, below titles, and takes the columns a person chose', async () => {
    for (const heading of ['CASE REFERENCE', 'case-reference ', 'Case_Reference', 'caseReference'])
      expect(fieldOf(heading)).toBe('caseReference');
    expect(fieldOf('Procedure')).toBeNull();
    const text = 'Week 4,,\n,,\nROOM,date ,START\nTheatre 1,2026-01-20,08:30\n';
    expect(values(await rowsOf(text))).toEqual([{ date: '2026-01-20', start: '08:30' }]);
    const list = await rowsOf(text, { sheet: null, columns: { theatre: 1, start: null } });
    expect(values(list)).toEqual([{ theatre: 'Theatre 1', date: '2026-01-20' }]);
    expect(understoodWords(list)).toContain('What stands above row 3 was not read.');
  });

  it('never reads a column about the patient, nor lets it be chosen', async () => {
    for (const heading of [
      'Patient',
      'NHS number',
      'DOB',
      'Date of birth',
      'Hospital no',
      'MRN',
      'Name',
      'Notes',
    ])
      expect(isAboutThePatient(heading)).toBe(true);
    for (const heading of Object.values(FIELD_HEADINGS)) expect(isAboutThePatient(heading)).toBe(false);
    const text = 'Theatre,Start,Patient name\nTheatre 1,08:30,Penelope Quillfeather\n';
    const list = await rowsOf(text, { sheet: null, columns: { surgeon: 3 } });
    expect(JSON.stringify(list)).not.toContain('Quillfeather');
    expect(understoodWords(list).join(' ')).toContain('Column 3 is about the patient');
  });
});

describe('XLSX', () => {
  const SAMPLE = sampleRows(['Theatre 1', 'Theatre 2'], ['Tobias Wray'], DAY);

  /** Our own workbook with its parts changed. */
  async function changed(change: (files: Record<string, string>) => void): Promise<Uint8Array> {
    const files = unzipSync(await sampleXlsx(SAMPLE));
    const texts = Object.fromEntries(
      Object.entries(files).map(([name, file]) => [name, new TextDecoder().decode(file)]),
    );
    change(texts);
    return zipSync(Object.fromEntries(Object.entries(texts).map(([name, text]) => [name, strToU8(text)])));
  }
  const SHEET = 'xl/worksheets/sheet1.xml';
  const inSheet = (from: RegExp, to: string) =>
    changed((files) => {
      const before = files[SHEET] ?? '';
      files[SHEET] = before.replace(from, to);
      expect(files[SHEET]).not.toBe(before);
    });

  it('is read by its first sheet or the one named', async () => {
    const list = await rowsOf(await sampleXlsx(SAMPLE));
    expect(list.understood).toMatchObject({
      format: 'xlsx',
      sheet: 'Theatre list',
      sheets: ['Theatre list'],
    });
    const named = await readListFile(await sampleXlsx(SAMPLE), { sheet: 'Other', columns: {} });
    expect(named).toEqual({ ok: false, fault: { code: 'no-such-sheet', sheets: ['Theatre list'] } });
  });

  it('counts days from 1904 where the workbook says so', async () => {
    const file = await changed((files) => {
      files['xl/workbook.xml'] = (files['xl/workbook.xml'] ?? '').replace(
        /<workbookPr\b[^>]*\/>|(?=<sheets)/,
        '<workbookPr date1904="1"/>',
      );
      // 46042 counted from 1900 is 44580 counted from 1904: 1462 days lie between (ECMA-376 Part 1, 18.17.4.1)
      files[SHEET] = (files[SHEET] ?? '').replaceAll('<v>46042</v>', '<v>44580</v>');
    });
    const [first] = values(await rowsOf(file));
    expect(momentOfSerial(Number(first?.date))).toEqual({ date: '2026-01-20', minute: 0 });
    expect(momentOfSerial(Number(first?.start))).toEqual({ date: null, minute: 510 });
  });

  it('shows the errors of formulas, and those not worked out, for what they are', async () => {
    const error = await inSheet(/<c r="D2"[^>]*>.*?<\/c>/, '<c r="D2" t="e"><f>1/0</f><v>#DIV/0!</v></c>');
    expect(values(await rowsOf(error))[0]?.minutes).toBe('#DIV/0!');
    const waiting = await inSheet(/<c r="D2"[^>]*>.*?<\/c>/, '<c r="D2"><f>60+30</f></c>');
    expect(values(await rowsOf(waiting))[0]?.minutes).toBe('#NOT WORKED OUT');
    const worked = await inSheet(/<c r="D2"[^>]*>.*?<\/c>/, '<c r="D2"><f>60+30</f><v>90</v></c>');
    expect(values(await rowsOf(worked))[0]?.minutes).toBe(90);
    const written = await inSheet(
      /<c r="B2"[^>]*>.*?<\/c>/,
      '<c r="B2" t="d"><v>2026-01-20T00:00:00</v></c>',
    );
    expect(values(await rowsOf(written))[0]?.date).toBe('2026-01-20T00:00:00');
  });

  it('is refused where it would fill the memory, is damaged, or is of the old form', async () => {
    const far = await inSheet(
      /<\/sheetData>/,
      '<row r="1048576"><c r="XFD1048576"><v>1</v></c></row></sheetData>',
    );
    expect(await readListFile(far, ASKED)).toEqual({
      ok: false,
      fault: { code: 'sheet-too-large', cell: 'XFD1048576' },
    });
    const bomb = await changed((files) => {
      files['xl/media.xml'] = ' '.repeat(21_000_000);
    });
    expect(bomb.byteLength).toBeLessThan(700_000);
    expect(await readListFile(bomb, ASKED)).toEqual({
      ok: false,
      fault: { code: 'workbook-too-large-inside' },
    });
    const cut = (await sampleXlsx(SAMPLE)).slice(0, 900);
    expect(await readListFile(cut, ASKED)).toEqual({ ok: false, fault: { code: 'unreadable-workbook' } });
    const empty = zipSync({ 'readme.xml': strToU8('<x/>') });
    expect(await readListFile(empty, ASKED)).toEqual({ ok: false, fault: { code: 'unreadable-workbook' } });
    const old = new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1]);
    expect(await readListFile(old, ASKED)).toEqual({ ok: false, fault: { code: 'old-workbook' } });
  });
});

/** Texts of a list, also such as a spreadsheet would work out, and with what separates cells in them. */
const anyText = fc
  .tuple(fc.constantFrom('', '=', '+', '-', '@', "'=", '"', ';'), fc.string({ maxLength: 20 }))
  .map(([first, rest]) => `${first}${rest}`.replace(/[\p{Cc}\p{Cs}\uFFFE\uFFFF\uFEFF]/gu, '').trim())
  .filter((text) => text !== '' && !/^'[=+\-@]/.test(text) && !/_x[0-9a-f]{4}_/i.test(text))
  // the writer of workbooks looks texts up in a plain object, and stumbles over the names of its own members
  .filter((text) => !(text in {}));
const anyRow: fc.Arbitrary<SampleRow> = fc.record({
  theatre: anyText,
  date: fc
    .integer({ min: 0, max: 20_000 })
    .map((days) =>
      plainDate.parse(new Date(days * 86_400_000 + Date.UTC(2000, 0, 1)).toISOString().slice(0, 10)),
    ),
  start: fc.integer({ min: 0, max: 1439 }),
  minutes: fc.integer({ min: 10, max: 1440 }),
  region: anyText,
  side: anyText,
  surgeon: anyText,
  urgency: anyText,
  rowId: anyText,
});

describe('our own sample', () => {
  const clock = (minute: number) =>
    `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

  it('comes back from CSV and XLSX as it was written', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyRow, { minLength: 1, maxLength: 4 }), async (rows) => {
        const texts = ({ theatre, region, side, surgeon, urgency, rowId }: SampleRow) => ({
          theatre,
          region,
          side,
          surgeon,
          urgency,
          rowId,
        });
        expect(values(await rowsOf(sampleCsv(rows)))).toEqual(
          rows.map((row) => ({
            ...texts(row),
            date: row.date,
            start: clock(row.start),
            minutes: String(row.minutes),
          })),
        );
        const book = values(await rowsOf(await sampleXlsx(rows)));
        expect(
          book.map(({ date, start, ...rest }) => ({
            ...rest,
            date: momentOfSerial(Number(date))?.date,
            start: momentOfSerial(Number(start))?.minute,
          })),
        ).toEqual(
          rows.map((row) => ({ ...texts(row), date: row.date, start: row.start, minutes: row.minutes })),
        );
      }),
      { numRuns: 25 },
    );
  });

  it('keeps a spreadsheet from working texts out, and leaves dates, times and numbers as they are', () => {
    const [row] = sampleRows(['=1+1'], ['-A'], DAY);
    if (!row) throw new Error('no sample');
    expect(sampleCsv([{ ...row, minutes: -5 }])).toContain(
      "'=1+1,2026-01-20,08:30,-5,Distal radius,Left,'-A,",
    );
  });
});

it('of a workbook whose first sheet is no list, the first that is one is read, and which that was is told', async () => {
  const head = ['Theatre', 'Date', 'Start'].map((value) => ({ value, type: String }));
  const line = (start: string) =>
    ['Theatre 1', '2026-01-20', start].map((value) => ({ value, type: String }));
  const book = writeWorkbook([
    { sheet: 'Notes', data: [[{ value: 'Nothing but remarks', type: String }]] },
    { sheet: 'This week', data: [head, line('08:30')] },
    { sheet: 'Next week', data: [head, line('09:30')] },
  ]);
  const file = new Uint8Array(await (await book.toBlob()).arrayBuffer());
  const list = await rowsOf(file);
  expect(list.understood).toMatchObject({
    sheet: 'This week',
    sheets: ['Notes', 'This week', 'Next week'],
  });
  expect(values(list)).toMatchObject([{ start: '08:30' }]);
  expect(values(await rowsOf(file, { ...ASKED, sheet: 'Next week' }))).toMatchObject([{ start: '09:30' }]);
  expect(await readListFile(file, { ...ASKED, sheet: 'Notes' })).toMatchObject({ ok: false });
});
