import readWorkbook from 'read-excel-file/node';
import { expect, it } from 'vitest';
import { csvOf, type ListColumn } from '@/lib/lists/csv';
import { workbookOf } from '@/lib/lists/workbook';

interface Row {
  text: string | null;
  pieces: number;
}
const COLUMNS: ListColumn<Row>[] = [
  { head: 'Text', value: ({ text }) => text },
  { head: 'Pieces', value: ({ pieces }) => pieces },
];

// RFC 4180: quotes doubled, lines end in CRLF. Formula starters: OWASP, CSV injection, from memory
it('keeps a spreadsheet from working out what is text, and leaves numbers alone', () => {
  const rows = [
    { text: '=1+2', pieces: -3 },
    { text: '+44 1632 960001', pieces: 1 },
    { text: '-2 spare', pieces: 1 },
    { text: '@home', pieces: 1 },
    { text: 'a, "b"\nc', pieces: 1 },
    { text: null, pieces: 0 },
    { text: '09521234500017', pieces: 1 },
    { text: '3 = 3', pieces: 1 },
  ];
  expect(csvOf(COLUMNS, rows)).toBe(
    [
      '\uFEFFText,Pieces',
      "'=1+2,-3",
      "'+44 1632 960001,1",
      "'-2 spare,1",
      "'@home,1",
      '"a, ""b""\nc",1',
      ',0',
      '09521234500017,1',
      '3 = 3,1',
      '',
    ].join('\r\n'),
  );
});

// read back by another package than the one that wrote it
it('a workbook keeps texts as texts, leading zeros and all, and numbers as numbers', async () => {
  const book = await workbookOf('List', COLUMNS, [
    { text: '09521234500017', pieces: 5 },
    { text: '=1+2', pieces: 0 },
    { text: null, pieces: 2 },
  ]);
  const [sheet] = await readWorkbook(Buffer.from(book));
  expect(sheet?.data).toEqual([
    ['Text', 'Pieces'],
    ['09521234500017', 5],
    ['=1+2', 0],
    [null, 2],
  ]);
});
