import { massFigure } from '../calculations/completeness/mass';
import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import type { PackShort } from '../packs/pack';
import { writeGrams } from '../quantities/mass';
import type { ConfigurationVersion } from '../sets/configuration';
import { canBeCounted } from '../sets/count';
import { completenessInputOf, type HeldLine, type SetSettings } from '../sets/holdings';
import type { HeldBecause, TurnStep } from '../sets/setState';
import { countWord } from '../wording/numbers';
import { CLASS_SHORT_WORDS, SHEET_WORDS, countSheetWords as words } from '../wording/paper';
import { HELD_BECAUSE_WORDS, stopAbout, stopWords, TURN_STEP_WORDS } from '../wording/sets';
import { questionWords } from '../wording/theatre-counts';
import { editionOf, type Printing, recordCode, sheetCautions, shortDateWords } from './edition';
import { rowDrawings } from './itemDrawing';
import { itemWarnings } from './itemWarnings';
import { mustHaveMark } from './mustHaveMark';
import { rackGrid } from './rackGrid';
import { type Block, type Cell, type Notice, type Sheet, type Table, text, textCell } from './sheet';

/** What a count sheet is made from: a set as it is now, and the version it follows. */
export interface CountSheetOf {
  set: {
    code: string;
    owner: 'ours' | 'loan';
    ownerNote: string | null;
    step: TurnStep;
    heldBecause: string | null;
    useBy: string | null;
    place: { name: string } | null;
    revision: number;
    configuration: { name: string };
    version: { version: number; status: ConfigurationVersion['status'] };
    lines: readonly HeldLine[];
    foreign: readonly { itemId: ItemId; quantity: number }[];
  };
  /** Layers of the version with their names, and its boxes. */
  version: Pick<ConfigurationVersion, 'layers' | 'basketItemId' | 'containerItemId'>;
  items: ReadonlyMap<ItemId, Item>;
  settings: SetSettings;
  /** What the set was closed without, where its pack went short. */
  sentShort?: PackShort | null;
  /** Figures of counts in theatre that did not come out and travel with the set until two people settle them. */
  questions?: readonly { thing: string; expected: number; counted: number; reference: string }[];
  printing: Printing;
  /** The number it got as it was printed; a sheet without one is a specimen. */
  number?: string | null;
}

/** Room for a drawing in a row, in millimetres of paper. */
const DRAWING = { widthMm: 36, heightMm: 11 };
const EMPTY_FOREIGN_ROWS = 4;

/**
 * The sheet a set is counted with: layer by layer what is expected, with empty cells for before, added and after. What
 * was counted last is never printed while the set is open, so that every count is made blind; once it is closed, the
 * sheet that travels with it says SHORT.
 */
export function countSheet(given: CountSheetOf): Sheet {
  const { set, printing } = given;
  const edition = editionOf(`${set.version.version}, set revision ${set.revision}`, printing);
  const layers = [...new Set(set.lines.map(({ layer }) => layer))].sort((a, b) => a - b);
  const pieces = set.lines.reduce((sum, { expected }) => sum + expected, 0);
  return {
    kind: 'countSheet',
    kindWords: SHEET_WORDS.countSheet,
    title: set.code,
    subtitle: set.configuration.name,
    facts: [
      { term: 'Configuration', value: `version ${set.version.version}` },
      { term: 'Set revision', value: String(set.revision) },
      { term: 'Lines · pieces', value: `${set.lines.length} · ${pieces}` },
      {
        term: 'Owner',
        value: set.owner === 'ours' ? 'ours' : `loan${set.ownerNote ? `, ${set.ownerNote}` : ''}`,
      },
      { term: 'Step', value: TURN_STEP_WORDS[set.step] },
      { term: 'Place', value: set.place?.name ?? 'not stated' },
      { term: 'Use-by', value: set.useBy === null ? 'none while open' : shortDateWords(set.useBy) },
    ],
    blocks: [
      ...notices(given),
      { kind: 'paragraph', text: words.howTo, size: 'body' },
      { kind: 'legend', title: words.legendTitle, marks: ([1, 2, 3, 4] as const).map(mustHaveMark) },
      ...layers.flatMap((layer) => layerBlocks(layer, given)),
      ...foreignBlocks(),
      ...massBlocks(given),
      { kind: 'heading', level: 2, text: words.signatures, note: null },
      {
        kind: 'signatures',
        boxes: [
          { title: words.signed.counted, note: null },
          { title: words.signed.checked, note: words.blind },
          { title: words.signed.before, note: null },
          { title: words.signed.after, note: null },
        ],
      },
    ],
    record: recordCode(
      'countSheet',
      set.code,
      `V${set.version.version}-R${set.revision}`,
      printing.at,
      given.number ?? null,
    ),
    edition,
    cautions: sheetCautions(edition),
  };
}

function notices({ set, items, sentShort, questions = [], printing }: CountSheetOf): Notice[] {
  const name = (id: ItemId) => items.get(id)?.name ?? id;
  const found: Notice[] = [];
  if (set.version.status === 'draft') {
    found.push({ kind: 'notice', word: words.draftWord, shape: 'note', lines: [words.draftVersion] });
  }
  if (set.step === 'held') {
    const because =
      set.heldBecause === null ? 'nobody has said why' : HELD_BECAUSE_WORDS[set.heldBecause as HeldBecause];
    found.push({
      kind: 'notice',
      word: words.heldWord,
      shape: 'stop',
      lines: [`because ${because ?? set.heldBecause}.`],
    });
  }
  if (questions.length > 0) {
    found.push({
      kind: 'notice',
      word: words.openQuestionWord,
      shape: 'stop',
      lines: questions.map((one) => words.openQuestion(questionWords(one), one.reference)),
    });
  }
  // an open set is about to be counted: what was found before must not guide the counter
  if (canBeCounted(set.step)) return found;
  const short = set.lines.filter((line) => line.found !== null && line.found < line.expected);
  const foreign = set.foreign.map(({ itemId, quantity }) => words.foreignLine(quantity, name(itemId)));
  if (short.length > 0 || foreign.length > 0) {
    const lines = [...short]
      .sort((a, b) => a.mustHaveClass - b.mustHaveClass)
      .map((line) =>
        words.shortLine(
          name(line.itemId),
          placeOf(line),
          line.found ?? 0,
          line.expected,
          CLASS_SHORT_WORDS[line.mustHaveClass],
        ),
      );
    const whatItStops = [
      ...(sentShort?.stops ?? []).map((stop) =>
        words.stops(stopAbout(stop, printing.at), stopWords(stop, name)),
      ),
      ...(sentShort?.forCase ? [words.forCaseOnly(sentShort.forCase.reference)] : []),
    ];
    found.push({
      kind: 'notice',
      word: words.shortWord,
      shape: 'stop',
      lines: [...lines, ...foreign, ...whatItStops],
    });
  }
  const notCounted = set.lines.filter((line) => line.found === null).length;
  if (notCounted > 0) {
    found.push({
      kind: 'notice',
      word: words.notCountedWord,
      shape: 'unknown',
      lines: [words.notCounted(notCounted)],
    });
  }
  return found;
}

const placeOf = ({ layer, row, slot }: HeldLine) => `layer ${layer}, ${row} · ${slot}`;

function layerBlocks(layer: number, { set, version, items }: CountSheetOf): Block[] {
  const lines = set.lines.filter((line) => line.layer === layer);
  const name = version.layers.find((one) => one.layer === layer)?.name;
  const pieces = lines.reduce((sum, { expected }) => sum + expected, 0);
  const loose = lines.filter(({ rackItemId }) => rackItemId === null);
  const racks = [...new Set(lines.flatMap(({ rackItemId }) => rackItemId ?? []))];
  return [
    {
      kind: 'heading',
      level: 2,
      text: name === undefined ? words.layerUnnamed(layer) : words.layer(layer, name),
      note: words.layerNote(lines.length, pieces),
    },
    ...(loose.length > 0 ? [lineTable(layer, loose, items)] : []),
    ...racks.flatMap((rackItemId): Block[] => [
      { kind: 'heading', level: 3, text: items.get(rackItemId)?.name ?? rackItemId, note: null },
      rackGrid(
        items.get(rackItemId)?.name ?? rackItemId,
        lines.filter((line) => line.rackItemId === rackItemId),
        items,
      ),
      emptyTable(words.rackUnsound, [{ head: words.rackUnsound, widthMm: null }], 1),
    ]),
  ];
}

function lineTable(layer: number, lines: readonly HeldLine[], items: ReadonlyMap<ItemId, Item>): Table {
  const { columns } = words;
  const known = lines.flatMap(({ itemId }) => items.get(itemId) ?? []);
  const drawings = rowDrawings(known, DRAWING);
  const narrow = (head: string, widthMm: number) => ({ head, widthMm, align: 'centre' as const });
  return {
    kind: 'table',
    caption: words.tableCaption(layer),
    columns: [
      narrow(columns.place, 14),
      { head: columns.drawing, widthMm: DRAWING.widthMm + 4, align: 'left' },
      { head: columns.item, widthMm: null, align: 'left' },
      narrow(columns.mustHaveClass, 10),
      narrow(columns.expected, 17),
      narrow(columns.before, 14),
      narrow(columns.added, 14),
      narrow(columns.after, 14),
      { head: columns.unsound, widthMm: 22, align: 'left' },
    ],
    rowHeader: 2,
    rowMm: 10.5,
    rows: lines.map((line): Cell[] => [
      textCell(text(`${line.row} · ${line.slot}`, 'large', true)),
      drawings.get(line.itemId) ?? textCell(text('no drawing', 'small')),
      itemCell(line, items),
      { kind: 'mark', mark: mustHaveMark(line.mustHaveClass) },
      textCell(text(String(line.expected), 'key', true), text(words.minimum(line.minimum), 'small')),
      { kind: 'blank' },
      { kind: 'blank' },
      { kind: 'blank' },
      { kind: 'blank' },
    ]),
  };
}

function itemCell(line: HeldLine, items: ReadonlyMap<ItemId, Item>): Cell {
  const item = items.get(line.itemId);
  const substitutes = line.substitutes.map((id) => items.get(id)?.code ?? id);
  return textCell(
    text(item?.name ?? line.itemId, 'body', true),
    ...(item?.nickname ? [text(`“${item.nickname}”`, 'small')] : []),
    text(item?.code ?? '', 'small'),
    ...itemWarnings(item),
    ...(item && item.partsPerPiece > 1 ? [text(words.parts(item.partsPerPiece), 'small', true)] : []),
    ...(substitutes.length > 0 ? [text(words.substitutes(substitutes.join(', ')), 'small')] : []),
  );
}

function foreignBlocks(): Block[] {
  const { what, howMany, home } = words.foreignColumns;
  return [
    { kind: 'heading', level: 2, text: words.foreign, note: words.foreignNote },
    emptyTable(
      words.foreign,
      [
        { head: what, widthMm: null },
        { head: howMany, widthMm: 24 },
        { head: home, widthMm: 66 },
      ],
      EMPTY_FOREIGN_ROWS,
    ),
  ];
}

function massBlocks({ set, version, items, settings }: CountSheetOf): Block[] {
  const asConfigured = set.lines.map((line) => ({ ...line, found: line.expected }));
  const mass = massFigure(
    completenessInputOf(asConfigured, [version.basketItemId, version.containerItemId], items, settings),
  );
  const unknown = [
    ...(mass.unknownLines.length > 0
      ? [`${countWord(mass.unknownLines.length)} ${mass.unknownLines.length === 1 ? 'line' : 'lines'}`]
      : []),
    ...(mass.containerKnown ? [] : ['basket or container']),
  ].join(' and ');
  const grams = writeGrams(mass.foundGrams);
  const sentence = mass.exact ? words.massExpected(grams) : words.massAtLeast(grams, unknown);
  const limits = words.massLimits(mass.limits.map(({ limitGrams }) => writeGrams(limitGrams)).join(', '));
  const { weighed, scale, by } = words.massColumns;
  return [
    { kind: 'heading', level: 2, text: words.mass, note: null },
    { kind: 'paragraph', text: `${sentence} ${limits}`, size: 'body' },
    emptyTable(
      words.mass,
      [
        { head: weighed, widthMm: 50 },
        { head: scale, widthMm: null },
        { head: by, widthMm: 50 },
      ],
      1,
    ),
  ];
}

/** Rows of empty cells, to be written in. */
function emptyTable(
  caption: string,
  columns: { head: string; widthMm: number | null }[],
  rows: number,
): Table {
  return {
    kind: 'table',
    caption,
    columns: columns.map((column) => ({ ...column, align: 'left' })),
    rowHeader: null,
    rowMm: 10,
    rows: Array.from({ length: rows }, () => columns.map((): Cell => ({ kind: 'blank' }))),
  };
}
