import fc from 'fast-check';
import { LIST_KINDS } from '@/lib/exchange/list';
import { LISTS } from '@/lib/exchange/lists/lists';
import { templateCsv } from '@/lib/exchange/out';
import { readLoanList } from '@/lib/loans/listImport';
import { plainDate } from '@/lib/quantities/plainDate';
import { sampleCsv, sampleRows } from '@/lib/theatre/import/sample';
import { readAsList, readAsTheatreList } from './readLists';
import { spoiltBytes, spoiltText } from './spoilt';
import { requireSentence, target } from './target';

const LOAN = [
  'tray,code,gtin,name,quantity,implant,class',
  'A,CR-C35-20,09521234500013,Cortical screw 3.5 × 20 mm,4,yes,2',
  'A,,,"Bender, small",1,no,',
  'B,CR-B25-110,,Drill bit 2.5,2,no,1',
].join('\r\n');
const KNOWN = [
  {
    id: 'item_cr-c35-20',
    code: 'CR-C35-20',
    gtin: '09521234500013',
    name: 'Cortical screw 3.5 × 20 mm',
    implant: true,
  },
];
const THEATRE = sampleCsv(
  sampleRows(['Theatre 1', 'Theatre 3'], ['Ada Quill'], plainDate.parse('2026-01-20')),
);
const KINDS = ['theatre', 'loan', ...LIST_KINDS] as const;

const encoded = (text: string, how: string): Uint8Array => {
  if (how === 'utf16') return new Uint8Array(Buffer.from(`\uFEFF${text}`, 'utf16le'));
  return new Uint8Array(Buffer.from(text, how === 'latin1' ? 'latin1' : 'utf8'));
};

/** A list with its characters spoilt, in several encodings, its bytes then spoilt again. */
const files = fc.constantFrom(...KINDS).chain((kind) => {
  const sound = kind === 'theatre' ? THEATRE : kind === 'loan' ? LOAN : templateCsv(LISTS[kind]);
  const several = fc.constantFrom(',', ';', '\t').map((sign) => sound.replaceAll(',', sign));
  const bytes = fc
    .tuple(spoiltText(several), fc.constantFrom('utf8', 'utf8', 'latin1', 'utf16'))
    .map(([text, how]) => encoded(text, how));
  return fc.record({ kind: fc.constant(kind), bytes: spoiltBytes(bytes, 2), way: fc.nat() });
});

export const lists = target({
  name: 'lists',
  unit: 'CSV files',
  runs: { long: 100_000, short: 300 },
  arbitrary: files,
  async hold({ kind, bytes, way }) {
    if (kind === 'theatre') return readAsTheatreList(bytes);
    if (kind !== 'loan') return readAsList(bytes, kind, way);
    const read = readLoanList(new TextDecoder().decode(bytes), KNOWN);
    if (read.ok) return 'taken';
    if (read.problems.length === 0) throw new Error('refused, and nothing says why');
    for (const { message } of read.problems) requireSentence(message, read.problems);
    return 'refused';
  },
});
