import type { Item } from '../catalogue/item';
import type { BuildToday } from '../plans/buildToday';
import type { CardBody } from '../plans/card';
import type { Construct } from '../plans/plan';
import { wallClock } from '../theatre/localTime';
import { cardPaperWords as words } from '../wording/card-paper';
import { fillGroups } from '../wording/fillGroups';
import { SHEET_WORDS } from '../wording/paper';
import { freeScrewWords } from '../wording/planChanges';
import { REGION_WORDS } from '../wording/plans';
import { dateWords, editionOf, type Printing, recordCode, sheetCautions } from './edition';
import { rowDrawings } from './itemDrawing';
import { type Block, type Cell, type Sheet, text, textCell } from './sheet';

/** What a preference card is printed from: its present version, the starts it names, and what can be built of each today. */
export interface PreferenceCardOf {
  card: {
    id: string;
    surgeon: { name: string };
    procedure: { name: string; region: Construct['region'] };
    version: number;
    savedAt: string;
    body: CardBody;
    retiredAt: string | null;
    used: number;
  };
  /** In the order of the card. */
  starts: readonly {
    name: string;
    version: number;
    construct: Construct;
    retiredAt: string | null;
    today: Pick<BuildToday, 'word' | 'reasons'> | null;
  }[];
  item: (id: string) => Item | undefined;
  printing: Printing;
}

const DRAWING = { widthMm: 32, heightMm: 11 };

/** A preference card on paper: which starts it names, and what the surgeon wants beside the plan. */
export function preferenceCardSheet(given: PreferenceCardOf): Sheet {
  const { card, printing } = given;
  const { facts } = words;
  const edition = editionOf(String(card.version), printing);
  return {
    kind: 'preferenceCard',
    kindWords: SHEET_WORDS.preferenceCard,
    title: card.procedure.name,
    subtitle: `${card.surgeon.name} · ${REGION_WORDS[card.procedure.region]}`,
    facts: [
      { term: facts.surgeon, value: card.surgeon.name },
      { term: facts.procedure, value: card.procedure.name },
      { term: facts.region, value: REGION_WORDS[card.procedure.region] },
      { term: facts.version, value: String(card.version) },
      { term: facts.saved, value: dateWords(wallClock(card.savedAt).date) },
      { term: facts.used, value: String(card.used) },
    ],
    blocks: [
      ...retiredBlocks(card.retiredAt),
      ...startBlocks(given),
      ...extraBlocks(given),
      ...(card.body.note === null
        ? []
        : ([
            { kind: 'heading', level: 2, text: words.note, note: null },
            { kind: 'paragraph', text: card.body.note, size: 'large' },
          ] as const)),
      { kind: 'paragraph', text: words.caution, size: 'body' },
    ],
    record: recordCode('preferenceCard', card.id, `V${card.version}`, printing.at),
    edition,
    cautions: sheetCautions(edition),
  };
}

function retiredBlocks(retiredAt: string | null): Block[] {
  if (retiredAt === null) return [];
  return [{ kind: 'notice', word: words.retiredWord, shape: 'note', lines: [words.retired] }];
}

function startBlocks({ starts, item }: PreferenceCardOf): Block[] {
  const heading: Block = { kind: 'heading', level: 2, text: words.starts, note: words.startsNote };
  if (starts.length === 0) return [heading, { kind: 'paragraph', text: words.noStarts, size: 'body' }];
  const { startColumns: columns } = words;
  const name = (id: string) => item(id)?.name ?? id;
  return [
    heading,
    {
      kind: 'table',
      caption: words.startsCaption,
      columns: [
        { head: columns.name, widthMm: 48, align: 'left' },
        { head: columns.states, widthMm: null, align: 'left' },
        { head: columns.today, widthMm: 50, align: 'left' },
      ],
      rowHeader: 0,
      rowMm: 12,
      rows: starts.map((start): Cell[] => [
        textCell(
          text(start.name, 'large', true),
          text(words.startVersion(start.version), 'small'),
          ...(start.retiredAt === null ? [] : [text(words.startRetired, 'body', true)]),
        ),
        textCell(
          ...start.construct.plates.flatMap((plate) => [
            text(name(plate.plateItemId), 'body', true),
            ...fillGroups(plate.fills, name).map((line) => text(line, 'small')),
          ]),
          ...start.construct.freeScrews.map((screw) =>
            text(`${screw.key}: ${freeScrewWords(screw, name)}`, 'small'),
          ),
        ),
        textCell(
          text(start.today?.word ?? 'not established', 'body', true),
          ...(start.today?.reasons ?? []).map((reason) => text(reason, 'small')),
        ),
      ]),
    },
  ];
}

function extraBlocks({ card, item }: PreferenceCardOf): Block[] {
  const heading: Block = { kind: 'heading', level: 2, text: words.extras, note: null };
  const { extras } = card.body;
  if (extras.length === 0) return [heading, { kind: 'paragraph', text: words.noExtras, size: 'body' }];
  const { extraColumns: columns } = words;
  const drawings = rowDrawings(
    extras.flatMap(({ itemId }) => item(itemId) ?? []),
    DRAWING,
  );
  return [
    heading,
    {
      kind: 'table',
      caption: words.extrasCaption,
      columns: [
        { head: columns.tick, widthMm: 11, align: 'centre' },
        { head: columns.quantity, widthMm: 17, align: 'centre' },
        { head: columns.drawing, widthMm: DRAWING.widthMm + 3, align: 'left' },
        { head: columns.item, widthMm: null, align: 'left' },
        { head: columns.note, widthMm: 60, align: 'left' },
      ],
      rowHeader: 3,
      rowMm: 12,
      rows: extras.map(({ itemId, quantity, note }): Cell[] => [
        { kind: 'tick' },
        textCell(text(`${quantity} ×`, 'key', true)),
        drawings.get(itemId) ?? textCell(text('no drawing', 'small')),
        textCell(text(item(itemId)?.name ?? itemId, 'body', true), text(item(itemId)?.code ?? '', 'small')),
        textCell(text(note ?? '', 'body')),
      ]),
    },
  ];
}
