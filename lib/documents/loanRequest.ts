import { writeGrams } from '../quantities/mass';
import { loanRequestWords as words } from '../wording/loan-paper';
import { listWords } from '../wording/numbers';
import { SHEET_WORDS } from '../wording/paper';
import { dateWords, editionOf, momentWords, type Printing, recordCode, sheetCautions } from './edition';
import { type Block, type Cell, type Column, type Sheet, text, textCell } from './sheet';

/** A lender’s firm as it stands at the head of a letter. */
export interface LetterTo {
  name: string;
  contact: string | null;
  phone: string | null;
  email: string | null;
  address: string | null;
}

/** What a request letter is made from. */
export interface LoanRequestOf {
  loan: {
    number: string;
    revision: number;
    askedFor: string;
    askedAt: string;
    fromDate: string | null;
    untilDate: string | null;
  };
  lender: LetterTo;
  askedBy: string;
  configuration: { code: string; name: string } | null;
  due: { at: string | null; neededAt: string | null };
  lines: readonly {
    tray: number;
    code: string | null;
    gtin: string | null;
    name: string;
    quantity: number;
  }[];
  massLimitsGrams: readonly number[];
  printing: Printing;
}

/** The letter that asks a lender for a loan: what, by when, and what must come with it. It names no case and no patient. */
export function loanRequest(asked: LoanRequestOf): Sheet {
  const { loan, lender, due, printing, massLimitsGrams } = asked;
  const edition = editionOf(String(loan.revision), printing);
  const { facts: terms } = words;
  const moment = (at: string | null) => (at === null ? words.notEstablished : momentWords(at));
  return {
    kind: 'loanRequest',
    kindWords: SHEET_WORDS.loanRequest,
    title: loan.number,
    subtitle: lender.name,
    facts: [
      { term: terms.to, value: lender.name },
      { term: terms.contact, value: lender.contact ?? 'not stated' },
      { term: terms.address, value: lender.address ?? 'not stated' },
      { term: terms.reach, value: [lender.phone, lender.email].filter(Boolean).join(', ') || 'not stated' },
      { term: terms.asked, value: momentWords(loan.askedAt) },
      { term: terms.askedBy, value: asked.askedBy },
      { term: terms.due, value: moment(due.at) },
      { term: terms.needed, value: moment(due.neededAt) },
      ...(loan.untilDate === null ? [] : [{ term: terms.until, value: dateWords(loan.untilDate) }]),
    ],
    blocks: [
      { kind: 'heading', level: 2, text: words.please, note: null },
      { kind: 'paragraph', text: loan.askedFor, size: 'large' },
      ...kindBlock(asked.configuration),
      ...linesBlocks(asked.lines),
      { kind: 'heading', level: 2, text: words.conditions, note: null },
      ...[
        words.declaration,
        words.instructions,
        words.list,
        words.held,
        words.mass(listWords(massLimitsGrams.map(writeGrams))),
        words.late,
      ].map((line): Block => ({ kind: 'paragraph', text: line, size: 'body' })),
      { kind: 'heading', level: 2, text: words.answer, note: words.answerNote },
      {
        kind: 'signatures',
        boxes: [
          { title: words.signed.lender, note: null },
          { title: words.signed.refuses, note: null },
        ],
      },
    ],
    record: recordCode('loanRequest', loan.number, `R${loan.revision}`, printing.at),
    edition,
    cautions: sheetCautions(edition),
  };
}

function kindBlock(configuration: { code: string; name: string } | null): Block[] {
  if (configuration === null) return [];
  return [{ kind: 'paragraph', text: words.kind(configuration.code, configuration.name), size: 'body' }];
}

function linesBlocks(lines: LoanRequestOf['lines']): Block[] {
  if (lines.length === 0) return [];
  const { columns } = words;
  const column = (head: string, widthMm: number | null, align: Column['align'] = 'left'): Column => ({
    head,
    widthMm,
    align,
  });
  return [
    { kind: 'heading', level: 2, text: words.listed, note: words.listedNote },
    {
      kind: 'table',
      caption: words.caption,
      columns: [
        column(columns.tray, 14, 'centre'),
        column(columns.code, 32),
        column(columns.gtin, 36),
        column(columns.name, null),
        column(columns.quantity, 22, 'centre'),
        column(columns.has, 22, 'centre'),
      ],
      rowHeader: 3,
      rowMm: 7,
      rows: lines.map(({ tray, code, gtin, name, quantity }): Cell[] => [
        textCell(text(String(tray))),
        textCell(text(code ?? '–')),
        textCell(text(gtin ?? '–')),
        textCell(text(name, 'body', true)),
        textCell(text(String(quantity))),
        { kind: 'blank' },
      ]),
    },
  ];
}
