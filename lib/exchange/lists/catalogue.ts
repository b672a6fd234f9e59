import {
  BENDER_FORM_WORDS,
  COUPLING_FORM_WORDS,
  DRILLING_POSITION_WORDS,
  DRIVE_FORM_WORDS,
  HANDLE_FORM_WORDS,
  HEAD_WORDS,
  HOLDS_WORDS,
  JAW_WORDS,
  KIND_WORDS,
  MATERIAL_WORDS,
  OUTER_FORM_WORDS,
  PLATE_SHAPE_WORDS,
  SCREW_KIND_WORDS,
  SIDE_WORDS,
  SLEEVE_FORM_WORDS,
  SLEEVE_SEAT_WORDS,
  THREAD_FORM_WORDS,
  TIP_WORDS,
  USE_WORDS,
} from '../../wording/catalogue';
import type { ListColumn, ListInfo } from '../list';
import { column } from './column';

const mm = (key: string, heading: string, says: string, example = ''): ListColumn =>
  column(key, heading, 'decimal', `${says} Millimetres.`, { unit: 'mm', example });
const choice = (
  key: string,
  heading: string,
  words: Readonly<Record<string, string>>,
  says: string,
  more: Partial<ListColumn> = {},
): ListColumn => column(key, heading, 'choice', says, { words, ...more });

/** What names an item and how it is kept. */
const SHARED: readonly ListColumn[] = [
  choice('kind', 'Kind', KIND_WORDS, 'What it is. An item keeps its kind.', {
    required: true,
    example: 'screw',
    also: ['Item kind', 'Type', 'Item type', 'Category'],
  }),
  column(
    'code',
    'Code',
    'code',
    'Its own code: letters, digits, dot, slash and hyphen. A row with a known code is about that item.',
    {
      required: true,
      example: 'EX-35-020',
      also: [
        'Item code',
        'Catalogue number',
        'Cat no',
        'Reference',
        'Ref',
        'Article',
        'Part number',
        'Product code',
      ],
    },
  ),
  column('name', 'Name', 'text', 'What it is called, at most 120 characters.', {
    required: true,
    example: 'Cortical screw 3.5, 20 mm',
    also: ['Description', 'Item name', 'Product', 'Product name'],
  }),
  column('nickname', 'Nickname', 'text', 'What the department calls it.'),
  column('makerId', 'Maker', 'text', 'Who makes it, by name.', {
    required: true,
    example: 'Carrowby Implants',
    also: ['Manufacturer', 'Supplier', 'Brand', 'Vendor'],
  }),
  choice('side', 'Side', SIDE_WORDS, 'Which limb it is for, where that matters.'),
  choice('material', 'Material', MATERIAL_WORDS, 'By the part of its standard.'),
  choice('use', 'Use', USE_WORDS, 'Whether it is used once or again.', {
    required: true,
    example: 'single use',
  }),
  column('suppliedSterile', 'Supplied sterile', 'yesNo', 'yes or no; empty: not stated.', {
    example: 'no',
    also: ['Sterile'],
  }),
  column(
    'reprocessingLimit',
    'Reprocessing limit',
    'whole',
    'Cycles its maker allows, where that is stated.',
    { unit: 'cycles' },
  ),
  column('massGrams', 'Mass', 'whole', 'Of one piece, in whole grams.', {
    unit: 'g',
    example: '2',
    also: ['Weight', 'Mass g', 'Weight g'],
  }),
  column('unitCostPounds', 'Unit cost', 'pounds', 'Of one piece, in pounds.', {
    unit: '£',
    example: '12.50',
    also: ['Price', 'Cost', 'Unit price'],
  }),
  column('packMultiple', 'Pack multiple', 'whole', 'Pieces in one pack as it is ordered.', {
    required: true,
    example: '1',
    also: ['Pack size', 'Pieces per pack', 'Unit of issue'],
  }),
  column('partsPerPiece', 'Parts of one piece', 'whole', 'Separate parts that make up one piece.', {
    required: true,
    example: '1',
  }),
  column('gtin', 'GTIN', 'gtin', 'Fourteen digits; the last one is checked.', {
    example: '',
    also: ['Barcode', 'EAN', 'GTIN-14', 'DI', 'UDI-DI'],
  }),
];

/** What the kinds have of their own. What a kind does not have stays empty in its rows. */
const OF_KINDS: readonly ListColumn[] = [
  choice('shape', 'Plate shape', PLATE_SHAPE_WORDS, 'Of plates.'),
  column(
    'takesThreadsMm',
    'Screw threads it takes',
    'decimals',
    'Of plates: diameters with semicolons, 2.7; 3.5. Millimetres.',
    { unit: 'mm' },
  ),
  mm('lengthMm', 'Length', 'Of screws the whole length, head included.', '20'),
  mm('widthMm', 'Width', 'Of plates that of the shaft.'),
  mm('heightMm', 'Height', 'Of racks, baskets and containers.'),
  mm('headWidthMm', 'Plate head width', 'Of plates that have a head.'),
  mm('thicknessMm', 'Thickness', 'Of plates.'),
  column('lookAlikeOf', 'Look-alike group', 'text', 'Of plates: the same name for those easily confused.'),
  choice('screwKind', 'Kind of screw', SCREW_KIND_WORDS, 'Of screws.', { example: 'cortical' }),
  column('screwFamily', 'Screw family', 'text', 'Shared by screws alike in all but length.', {
    example: 'Example cortical 3.5',
  }),
  choice('threadForm', 'Thread form', THREAD_FORM_WORDS, 'Of screws and taps.'),
  mm('threadMm', 'Thread diameter', 'Of screws and taps.', '3.5'),
  mm('coreMm', 'Core diameter', 'Of screws.', '2.4'),
  mm('pitchMm', 'Pitch', 'Of screws.'),
  mm('threadLengthMm', 'Thread length', 'Of screws that are threaded in part.'),
  mm('shaftMm', 'Smooth shaft diameter', 'Of partially threaded screws.'),
  choice('head', 'Screw head', HEAD_WORDS, 'Of screws.'),
  mm('headMm', 'Head diameter', 'Of screws; of countersinks the head they make room for.'),
  column(
    'lockingFamily',
    'Locking family',
    'text',
    'Declared by the maker; never worked out from diameters.',
  ),
  choice('drive.form', 'Drive', DRIVE_FORM_WORDS, 'Of screws and drivers.'),
  column('drive.size', 'Drive size', 'decimal', 'Millimetres; of a hexalobular drive its number.'),
  choice('tip', 'Screw tip', TIP_WORDS, 'Of screws.'),
  mm('cannulationMm', 'Cannulation', 'Diameter of the bore through it.'),
  column('torqueNmm', 'Torque', 'whole', 'Newton millimetres.', { unit: 'N mm' }),
  column('countersinkStated', 'Countersink asked for', 'yesNo', 'Of screws: yes or no.'),
  mm('innerMm', 'Inner diameter', 'Of washers.'),
  mm('outerMm', 'Outer diameter', 'Of washers.'),
  mm('diameterMm', 'Diameter', 'Of drill bits and guide wires.'),
  choice(
    'form',
    'Form',
    { ...SLEEVE_FORM_WORDS, ...HANDLE_FORM_WORDS, ...BENDER_FORM_WORDS },
    'Of sleeves, handles and plate benders.',
  ),
  column(
    'onlyForPlates',
    'Only for these plates',
    'text',
    'Of sleeves: codes with commas; empty where it is not restricted.',
  ),
  ...[0, 1].flatMap((end) => endColumns(end)),
  choice('coupling.form', 'Shank', COUPLING_FORM_WORDS, 'Its own shank.'),
  mm('coupling.sizeMm', 'Shank size', 'Of its own shank.'),
  column(
    'takes',
    'Shanks it takes',
    'text',
    'Of handles and torque limiters: form and millimetres with semicolons, hexagonal shank 6.5; wire 2.',
  ),
  column('fixedHandle', 'Fixed handle', 'yesNo', 'Of drivers and torque limiters: yes or no.'),
  column('holdsScrew', 'Holds the screw', 'yesNo', 'Of drivers: yes or no.'),
  mm('pinMm', 'Pin diameter', 'Of countersinks.'),
  mm('fromMm', 'Measures from', 'Of depth gauges.'),
  mm('toMm', 'Measures to', 'Of depth gauges.'),
  mm('hookMm', 'Hook width', 'Of depth gauges.'),
  column(
    'forThreadsMm',
    'Screw threads its scale is for',
    'decimals',
    'Of depth gauges: diameters with semicolons. Millimetres.',
    { unit: 'mm' },
  ),
  column('threadedTip', 'Threaded tip', 'yesNo', 'Of guide wires: yes or no.'),
  choice('jaw', 'Jaws', JAW_WORDS, 'Of reduction forceps.'),
  mm('takesThicknessMm', 'Takes plates as thick as', 'Of plate benders.'),
  mm('takesWidthMm', 'Takes plates as wide as', 'Of plate benders.'),
  choice('holds', 'Holds', HOLDS_WORDS, 'Of holders.'),
  column('rows', 'Rack rows', 'whole', 'Of screw racks.'),
  column('columns', 'Rack columns', 'whole', 'Of screw racks.'),
  mm('forThreadMm', 'For screws of thread', 'Of screw racks.'),
  column('purpose', 'What it is for', 'text', 'Of general instruments and consumables.'),
];

function endColumns(end: number): ListColumn[] {
  const at = (key: string) => `ends.${end}.${key}`;
  const head = (words: string) => `End ${end + 1}: ${words}`;
  return [
    mm(at('boreMm'), head('bore'), 'Of sleeves.'),
    mm(at('outerMm'), head('outer diameter'), 'Of sleeves.'),
    choice(at('outerForm'), head('outer form'), OUTER_FORM_WORDS, 'Of sleeves.'),
    column(at('seatsOn'), head('seats on'), 'choices', 'Of sleeves: several with semicolons.', {
      words: SLEEVE_SEAT_WORDS,
    }),
    column(at('positions'), head('positions'), 'choices', 'Of sleeves: several with semicolons.', {
      words: DRILLING_POSITION_WORDS,
    }),
    column(at('lockingFamily'), head('locking family'), 'text', 'Of threaded sleeves.'),
  ];
}

export const catalogueList: ListInfo = {
  kind: 'catalogue',
  name: 'Catalogue',
  rowIs: 'One item.',
  does: 'New codes are added, known ones changed where they differ. Nothing is withdrawn, and the holes of plates stay as they are: they are a list of their own.',
  columns: [...SHARED, ...OF_KINDS],
  partialBy: 'code',
  bringIn: 'editCatalogue',
  takeOut: 'readHospital',
};
