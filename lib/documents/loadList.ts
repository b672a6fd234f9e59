import type { HoldsImplants } from '../loads/implants';
import type { IndicatorKind, IndicatorResult, LoadState } from '../loads/load';
import type { Programme } from '../loads/programme';
import { bandOf } from '../loads/programme';
import { loadListWords as words } from '../wording/load-paper';
import { INDICATOR_WORDS, LOAD_STATE_WORDS, RESULT_WORDS } from '../wording/loads';
import { capitalised, listWords } from '../wording/numbers';
import { SHEET_WORDS } from '../wording/paper';
import { bandWords } from '../wording/thermal-dose';
import { editionOf, momentWords, type Printing, recordCode, sheetCautions, shortDateWords } from './edition';
import { type Block, type Cell, type Column, type Sheet, text, textCell } from './sheet';

/** What a load list is made from: a load as it is now. */
export interface LoadListOf {
  load: {
    number: string;
    revision: number;
    state: LoadState;
    steriliser: { name: string };
    programmeName: string;
    programme: Programme | null;
    cycleNumber: string | null;
    started: { at: string } | null;
    facts: {
      packs: readonly {
        number: string;
        name: string;
        barrier: string;
        implants: HoldsImplants;
        short: boolean;
      }[];
      indicators: readonly {
        kind: IndicatorKind;
        lot: string | null;
        useBy: string | null;
        position: string | null;
        result: IndicatorResult;
        readBy: string | null;
      }[];
      implantsAwaitBiological: boolean;
    };
  };
  printing: Printing;
}

const EMPTY_INDICATOR_ROWS = 3;

/** The paper that goes with a load: what goes in, with boxes for how it came out, indicators, and who did what. */
export function loadList({ load, printing }: LoadListOf): Sheet {
  const edition = editionOf(String(load.revision), printing);
  const { facts: terms } = words;
  const { packs } = load.facts;
  return {
    kind: 'loadList',
    kindWords: SHEET_WORDS.loadList,
    title: load.number,
    subtitle: `${load.steriliser.name}, ${load.programmeName}`,
    facts: [
      { term: terms.steriliser, value: load.steriliser.name },
      { term: terms.programme, value: load.programmeName },
      { term: terms.band, value: load.programme === null ? 'not stated' : bandWords(bandOf(load.programme)) },
      { term: terms.state, value: LOAD_STATE_WORDS[load.state] },
      { term: terms.cycle, value: load.cycleNumber ?? (load.started === null ? words.notYet : 'not stated') },
      { term: terms.started, value: load.started === null ? words.notYet : momentWords(load.started.at) },
      { term: terms.packs, value: String(packs.length) },
    ],
    blocks: [
      ...implantNotice(load.facts),
      { kind: 'heading', level: 2, text: words.contents, note: words.contentsNote },
      ...contentsBlocks(packs),
      { kind: 'heading', level: 2, text: words.indicators, note: words.indicatorsNote },
      indicatorTable(load.facts.indicators),
      { kind: 'paragraph', text: words.notAccepted, size: 'body' },
      {
        kind: 'signatures',
        boxes: [
          { title: words.signed.loaded, note: null },
          { title: words.signed.unloaded, note: null },
          { title: words.signed.decided, note: words.decidedNote },
        ],
      },
    ],
    record: recordCode('loadList', load.number, `R${load.revision}`, printing.at),
    edition,
    cautions: sheetCautions(edition),
  };
}

function implantNotice({ packs, implantsAwaitBiological }: LoadListOf['load']['facts']): Block[] {
  const waiting = packs.filter(({ implants }) => implants !== 'no').map(({ name }) => name);
  if (!implantsAwaitBiological || waiting.length === 0) return [];
  return [{ kind: 'notice', word: words.waitWord, shape: 'note', lines: [words.wait(listWords(waiting))] }];
}

const narrow = (head: string, widthMm: number): Column => ({ head, widthMm, align: 'centre' });
const wide = (head: string, widthMm: number | null): Column => ({ head, widthMm, align: 'left' });

function contentsBlocks(packs: LoadListOf['load']['facts']['packs']): Block[] {
  if (packs.length === 0) return [{ kind: 'paragraph', text: words.empty, size: 'large' }];
  const { columns } = words;
  return [
    {
      kind: 'table',
      caption: words.caption,
      columns: [
        narrow(columns.into, 11),
        wide(columns.what, null),
        wide(columns.pack, 34),
        wide(columns.implants, 24),
        narrow(columns.out, 16),
        wide(columns.unfit, 40),
        narrow(columns.by, 17),
      ],
      rowHeader: 1,
      rowMm: 11,
      rows: packs.map(({ name, number, barrier, implants, short }): Cell[] => [
        { kind: 'tick' },
        textCell(text(name, 'large', true), ...(short ? [text(words.short, 'body', true)] : [])),
        textCell(text(number, 'body'), text(barrier, 'small')),
        textCell(text(words.implants[implants], 'body', implants !== 'no')),
        { kind: 'tick' },
        { kind: 'blank' },
        { kind: 'blank' },
      ]),
    },
  ];
}

function indicatorTable(indicators: LoadListOf['load']['facts']['indicators']): Block {
  const { indicatorColumns: columns } = words;
  const blank = { kind: 'blank' } as const;
  return {
    kind: 'table',
    caption: words.indicators,
    columns: [
      wide(columns.kind, null),
      wide(columns.lot, 30),
      wide(columns.useBy, 26),
      wide(columns.place, 34),
      wide(columns.result, 26),
      wide(columns.by, 28),
    ],
    rowHeader: null,
    rowMm: 11,
    rows: [
      ...indicators.map((one): Cell[] => [
        textCell(text(capitalised(INDICATOR_WORDS[one.kind]), 'body', true)),
        one.lot === null ? blank : textCell(text(one.lot)),
        one.useBy === null ? blank : textCell(text(shortDateWords(one.useBy))),
        one.position === null ? blank : textCell(text(one.position)),
        one.result === 'pending'
          ? blank
          : textCell(text(RESULT_WORDS[one.result], 'body', one.result === 'failed')),
        one.readBy === null ? blank : textCell(text(one.readBy, 'small')),
      ]),
      ...Array.from({ length: EMPTY_INDICATOR_ROWS }, (): Cell[] => columnsOf(columns).map(() => blank)),
    ],
  };
}

const columnsOf = (columns: Record<string, string>) => Object.keys(columns);
