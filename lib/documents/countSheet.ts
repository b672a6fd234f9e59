import { massFigure } from '../calculations/completeness/mass';
import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import type { PackShort } from '../packs/pack';
import { writeGrams } from '../quantities/mass';
import type { ConfigurationVersion } from '../sets/configuration';
import { completenessInputOf, type HeldLine, type SetSettings } from '../sets/holdings';
import type { TurnStep } from '../sets/setState';
import { countWord } from '../wording/numbers';
import { SHEET_WORDS, countSheetWords as words } from '../wording/paper';
import { TURN_STEP_WORDS } from '../wording/sets';
import { layerBlocks } from './countSheetLines';
import { countSheetNotices } from './countSheetNotices';
import { editionOf, type Printing, recordCode, sheetCautions, shortDateWords } from './edition';
import { emptyTable } from './emptyTable';
import { mustHaveMark } from './mustHaveMark';
import type { Block, Sheet } from './sheet';

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
      ...countSheetNotices(given),
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
