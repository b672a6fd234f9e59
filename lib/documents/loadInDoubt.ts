import type { FailureOf, PackFate } from '../loads/touched';
import { loadInDoubtWords as words } from '../wording/load-paper';
import { FAILURE_WORDS, FATE_WORDS } from '../wording/loads';
import { SHEET_WORDS } from '../wording/paper';
import { editionOf, momentWords, type Printing, recordCode, sheetCautions, shortDateWords } from './edition';
import { type Block, type Cell, type Sheet, text, textCell } from './sheet';

interface DoubtedPack {
  number: string;
  name: string;
  loadId: string;
  fateThen: PackFate;
  fateNow: PackFate;
  cases: readonly { reference: string; date: string }[];
}

/** What the report of a failed load is made from. */
export interface LoadInDoubtOf {
  failed: {
    number: string;
    steriliser: string;
    decidedAt: string;
    decidedBy: string;
    reason: string;
    of: FailureOf;
    since: { number: string } | null;
    until: { number: string } | null;
    loads: readonly { id: string; number: string }[];
    packs: readonly DoubtedPack[];
  };
  printing: Printing;
}

/** What a failed load put in doubt: first what went out, with its cases, then what was here. */
export function loadInDoubt({ failed, printing }: LoadInDoubtOf): Sheet {
  const edition = editionOf('1', printing);
  const used = failed.packs.filter(({ fateThen }) => fateThen === 'used' || fateThen === 'notEstablished');
  const here = failed.packs.filter((pack) => !used.includes(pack));
  const { facts: terms } = words;
  return {
    kind: 'loadInDoubt',
    kindWords: SHEET_WORDS.loadInDoubt,
    title: failed.number,
    subtitle: `${failed.steriliser}: ${FAILURE_WORDS[failed.of]}`,
    facts: [
      { term: terms.failed, value: momentWords(failed.decidedAt) },
      { term: terms.by, value: failed.decidedBy },
      { term: terms.since, value: failed.since?.number ?? words.none },
      { term: terms.until, value: failed.until?.number ?? words.toNow },
      { term: terms.loads, value: failed.loads.map(({ number }) => number).join(', ') },
      { term: terms.packs, value: String(failed.packs.length) },
      { term: terms.used, value: String(used.length) },
      {
        term: terms.held,
        value: String(failed.packs.filter(({ fateNow }) => fateNow === 'heldAlready').length),
      },
    ],
    blocks: [
      { kind: 'paragraph', text: `${terms.why}: ${failed.reason}`, size: 'body' },
      { kind: 'heading', level: 2, text: words.usedTitle, note: used.length === 0 ? null : words.usedNote },
      packTable(used, failed, words.caption.used, words.usedNone),
      { kind: 'heading', level: 2, text: words.hereTitle, note: null },
      packTable(here, failed, words.caption.here, words.hereNone),
      {
        kind: 'signatures',
        boxes: [
          { title: words.signed.told, note: null },
          { title: words.signed.closed, note: null },
        ],
      },
    ],
    record: recordCode('loadInDoubt', failed.number, 'V1', printing.at),
    edition,
    cautions: sheetCautions(edition),
  };
}

function packTable(
  packs: readonly DoubtedPack[],
  failed: LoadInDoubtOf['failed'],
  caption: string,
  none: string,
): Block {
  if (packs.length === 0) return { kind: 'paragraph', text: none, size: 'body' };
  const { columns } = words;
  const numberOf = (loadId: string) => failed.loads.find(({ id }) => id === loadId)?.number ?? loadId;
  return {
    kind: 'table',
    caption,
    columns: [
      { head: columns.what, widthMm: null, align: 'left' },
      { head: columns.pack, widthMm: 28, align: 'left' },
      { head: columns.load, widthMm: 24, align: 'left' },
      { head: columns.before, widthMm: 36, align: 'left' },
      { head: columns.now, widthMm: 36, align: 'left' },
      { head: columns.cases, widthMm: 34, align: 'left' },
    ],
    rowHeader: 0,
    rowMm: 9,
    rows: packs.map((pack): Cell[] => [
      textCell(text(pack.name, 'body', true)),
      textCell(text(pack.number)),
      textCell(text(numberOf(pack.loadId))),
      textCell(text(FATE_WORDS[pack.fateThen], 'small', pack.fateThen === 'used')),
      textCell(text(FATE_WORDS[pack.fateNow], 'small')),
      textCell(
        ...(pack.cases.length > 0
          ? pack.cases.map(({ reference, date }) =>
              text(`${reference}, ${shortDateWords(date)}`, 'small', true),
            )
          : [text(pack.fateThen === 'used' ? words.caseUnknown : '–', 'small')]),
      ),
    ]),
  };
}
