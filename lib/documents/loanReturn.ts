import type { LastThere, OurDeclaration } from '../loans/declaration';
import type { ReconciledLine } from '../loans/reconcile';
import { writeGrams } from '../quantities/mass';
import { loanReturnWords as words } from '../wording/loan-paper';
import { CLAIM_STATE_WORDS, lastThereWords } from '../wording/loans';
import { capitalised } from '../wording/numbers';
import { SHEET_WORDS } from '../wording/paper';
import { dateWords, editionOf, momentWords, type Printing, recordCode, sheetCautions } from './edition';
import type { LetterTo } from './loanRequest';
import { type Block, type Cell, type Column, type Sheet, text, textCell } from './sheet';

type Figures = Omit<ReconciledLine, 'lineId' | 'listed'>;

/** What a return note is made from. */
export interface LoanReturnOf {
  loan: {
    number: string;
    revision: number;
    arrivedAt: string | null;
    backBy: string | null;
    collectedBy: string | null;
    collectedAt: string | null;
  };
  lender: LetterTo;
  due: { at: string | null };
  /** Whether a tray of it was in theatre, and for which case it was lent. */
  used: boolean;
  caseReference: string | null;
  trays: readonly { tray: number; tag: string | null; gramsIn: number | null; gramsOut: number | null }[];
  lines: readonly ({ name: string; tray: number; quantity: number } & Figures)[];
  claims: readonly {
    line: string;
    quantity: number;
    kind: 'notFound' | 'damaged';
    lastThere: LastThere;
    state: keyof typeof CLAIM_STATE_WORDS;
  }[];
  declared: OurDeclaration | null;
  printing: Printing;
}

/** The paper that goes back with a loan: what goes, what lacks, how it was decontaminated, and room for both signatures. */
export function loanReturn(going: LoanReturnOf): Sheet {
  const { loan, lender, due, printing, declared } = going;
  const edition = editionOf(String(loan.revision), printing);
  const { facts: terms } = words;
  return {
    kind: 'loanReturn',
    kindWords: SHEET_WORDS.loanReturn,
    title: loan.number,
    subtitle: lender.name,
    facts: [
      { term: terms.to, value: [lender.name, lender.address].filter(Boolean).join(', ') },
      {
        term: terms.contact,
        value: [lender.contact, lender.phone].filter(Boolean).join(', ') || 'not stated',
      },
      { term: terms.due, value: due.at === null ? words.noDue : momentWords(due.at) },
      { term: terms.arrived, value: loan.arrivedAt === null ? 'not stated' : momentWords(loan.arrivedAt) },
      { term: terms.used, value: going.used ? (going.caseReference ?? 'a period') : words.notInTheatre },
      { term: terms.backBy, value: loan.backBy === null ? 'not stated' : dateWords(loan.backBy) },
      { term: terms.trays, value: String(going.trays.length) },
    ],
    blocks: [
      ...declarationBlocks(declared),
      trayTable(going.trays, declared),
      { kind: 'heading', level: 2, text: words.content, note: words.contentNote },
      lineBlock(going.lines),
      ...claimBlocks(going.claims),
      {
        kind: 'signatures',
        boxes: [
          { title: words.signed.declared, note: declared?.name ?? null },
          { title: words.signed.handed, note: null },
          { title: words.signed.collected, note: loan.collectedBy ?? words.collectedNote },
        ],
      },
    ],
    record: recordCode('loanReturn', loan.number, `R${loan.revision}`, printing.at),
    edition,
    cautions: sheetCautions(edition),
  };
}

function declarationBlocks(declared: OurDeclaration | null): Block[] {
  if (declared === null)
    return [{ kind: 'notice', word: words.notDeclared, shape: 'stop', lines: [words.notDeclaredLine] }];
  return [
    { kind: 'heading', level: 2, text: words.declared, note: null },
    { kind: 'paragraph', text: words.declaredLine(declared.name, momentWords(declared.at)), size: 'body' },
  ];
}

const column = (head: string, widthMm: number | null, align: Column['align'] = 'left'): Column => ({
  head,
  widthMm,
  align,
});

function trayTable(trays: LoanReturnOf['trays'], declared: OurDeclaration | null): Block {
  const { trayColumns: columns } = words;
  const mass = (grams: number | null) =>
    textCell(text(grams === null ? words.notWeighed : writeGrams(grams)));
  return {
    kind: 'table',
    caption: words.traysCaption,
    columns: [
      column(columns.tray, 44),
      column(columns.came, 32),
      column(columns.goes, 32),
      column(columns.state, null),
    ],
    rowHeader: 0,
    rowMm: 9,
    rows: trays.map(({ tray, tag, gramsIn, gramsOut }): Cell[] => {
      const how = declared?.trays.find((one) => one.tray === tray)?.how;
      return [
        textCell(text(words.tray(tray, tag), 'body', true)),
        mass(gramsIn),
        mass(gramsOut),
        textCell(text(how === undefined ? words.notDeclared : words.how[how], 'body', how === undefined)),
      ];
    }),
  };
}

function lineBlock(lines: LoanReturnOf['lines']): Block {
  if (lines.length === 0) return { kind: 'paragraph', text: words.noList, size: 'body' };
  const { columns } = words;
  return {
    kind: 'table',
    caption: words.caption,
    columns: [
      column(columns.item, null),
      column(columns.listed, 15, 'centre'),
      column(columns.came, 24, 'centre'),
      column(columns.used, 13, 'centre'),
      column(columns.goes, 24, 'centre'),
      column(columns.wrong, 42),
      column(columns.checked, 18, 'centre'),
    ],
    rowHeader: 0,
    rowMm: 7,
    rows: lines.map((line): Cell[] => {
      const figures = (found: ReconciledLine['cameIn']) =>
        textCell(text(found === null ? words.notCounted : words.pieces(found.sound, found.damaged)));
      const wrong = wrongWords(line);
      return [
        textCell(text(line.name, 'body', true), text(`tray ${line.tray}`, 'small')),
        textCell(text(String(line.quantity))),
        figures(line.cameIn),
        textCell(text(String(line.used))),
        figures(line.goesOut),
        textCell(...wrong.map((said) => text(said, 'body', true))),
        { kind: 'tick' },
      ];
    }),
  };
}

/** What of a line is not as it should be, each in a few words; nothing where all is in order or nobody has counted. */
export function wrongWords(line: Figures): string[] {
  const { lackedOnArrival, damagedOnArrival, lackingOnReturn, damagedHere } = line;
  const said: string[] = [];
  if (lackedOnArrival) said.push(words.lackedOnArrival(lackedOnArrival));
  if (damagedOnArrival) said.push(words.damagedOnArrival(damagedOnArrival));
  if (lackingOnReturn !== null && lackingOnReturn > 0) said.push(words.lacks(lackingOnReturn));
  if (lackingOnReturn !== null && lackingOnReturn < 0) said.push(words.moreThanCame(-lackingOnReturn));
  if (damagedHere) said.push(words.damagedHere(damagedHere));
  return said;
}

function claimBlocks(claims: LoanReturnOf['claims']): Block[] {
  if (claims.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: words.claims, note: null },
    ...claims.map(({ line, quantity, kind, lastThere, state }): Block => {
      const there = lastThereWords(lastThere.step, lastThere.at === null ? null : momentWords(lastThere.at));
      const said = words.claim(
        line,
        quantity,
        words.kinds[kind],
        there,
        capitalised(CLAIM_STATE_WORDS[state]),
      );
      return { kind: 'paragraph', text: said, size: 'body' };
    }),
  ];
}
