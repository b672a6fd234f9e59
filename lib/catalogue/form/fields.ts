import {
  BENDER_FORM_WORDS,
  HANDLE_FORM_WORDS,
  HEAD_WORDS,
  HOLDS_WORDS,
  JAW_WORDS,
  MATERIAL_WORDS,
  PLATE_SHAPE_WORDS,
  SCREW_KIND_WORDS,
  SIDE_WORDS,
  SLEEVE_FORM_WORDS,
  THREAD_FORM_WORDS,
  TIP_WORDS,
  USE_WORDS,
} from '../../wording/catalogue';
import type { ItemKind } from '../item';

/**
 * One field of the item form. `key` is the field's name in the item; a dimension `lengthUm` is entered in millimetres
 * under the name `lengthMm`. What is left empty is not stated.
 */
export type ItemField = { key: string; label: string; hint?: string; required?: boolean } & (
  | { entry: 'text' }
  | { entry: 'mm' }
  | { entry: 'whole'; unit?: string }
  | { entry: 'pounds' }
  | { entry: 'choice'; words: Readonly<Record<string, string>> }
  | { entry: 'yesNo' }
  /** Yes or no that is always known. */
  | { entry: 'flag' }
  /** Several diameters, written with commas. `unknown: false` where an empty list is an answer. */
  | { entry: 'mmList'; unknown: boolean }
  | { entry: 'textList' }
  | { entry: 'drive' }
  | { entry: 'coupling' }
  | { entry: 'couplings' }
  | { entry: 'ends' }
  | { entry: 'holes' }
);

const mm = (key: string, label: string, hint?: string): ItemField => ({
  entry: 'mm',
  key,
  label,
  ...(hint ? { hint } : {}),
});
const choice = (
  key: string,
  label: string,
  words: Readonly<Record<string, string>>,
  required = false,
): ItemField => ({
  entry: 'choice',
  key,
  label,
  words,
  required,
});
const coupling = (label = 'Shank'): ItemField => ({ entry: 'coupling', key: 'coupling', label });
const torque: ItemField = { entry: 'whole', key: 'torqueNmm', label: 'Torque', unit: 'N mm' };
const family: ItemField = {
  entry: 'text',
  key: 'lockingFamily',
  label: 'Locking family',
  hint: 'Declared by the maker; never worked out from diameters.',
};

/** What names an item and how it is kept: the same for every kind. */
export const SHARED_FIELDS: readonly ItemField[] = [
  {
    entry: 'text',
    key: 'code',
    label: 'Code',
    required: true,
    hint: 'Letters, digits, dot, slash and hyphen.',
  },
  { entry: 'text', key: 'name', label: 'Name', required: true },
  { entry: 'text', key: 'nickname', label: 'Nickname', hint: 'What the department calls it.' },
  { entry: 'choice', key: 'makerId', label: 'Maker', words: {}, required: true },
  { entry: 'choice', key: 'side', label: 'Side', words: SIDE_WORDS },
  { entry: 'choice', key: 'material', label: 'Material', words: MATERIAL_WORDS },
  { entry: 'choice', key: 'use', label: 'Use', words: USE_WORDS, required: true },
  { entry: 'yesNo', key: 'suppliedSterile', label: 'Supplied sterile' },
  { entry: 'whole', key: 'reprocessingLimit', label: 'Reprocessing limit', unit: 'cycles' },
  { entry: 'whole', key: 'massGrams', label: 'Mass', unit: 'g' },
  { entry: 'pounds', key: 'unitCostPence', label: 'Unit cost' },
  { entry: 'whole', key: 'packMultiple', label: 'Pack multiple', unit: 'pieces', required: true },
  { entry: 'whole', key: 'partsPerPiece', label: 'Parts of one piece', unit: 'parts', required: true },
  { entry: 'text', key: 'gtin', label: 'GTIN', hint: 'Fourteen digits; the last one is checked.' },
];

/** What each kind has of its own, in the order people measure it. */
export const KIND_FIELDS: Record<ItemKind, readonly ItemField[]> = {
  plate: [
    choice('shape', 'Shape', PLATE_SHAPE_WORDS, true),
    {
      entry: 'mmList',
      key: 'takesThreadsUm',
      label: 'Screw threads it takes',
      unknown: false,
      hint: 'Several with commas: 2.7, 3.5',
    },
    mm('lengthUm', 'Length'),
    mm('widthUm', 'Shaft width'),
    mm('headWidthUm', 'Head width', 'Empty where the plate has no head.'),
    mm('thicknessUm', 'Thickness'),
    {
      entry: 'text',
      key: 'lookAlikeOf',
      label: 'Look-alike group',
      hint: 'The same name for plates that are easily confused.',
    },
    { entry: 'holes', key: 'holes', label: 'Holes' },
  ],
  screw: [
    choice('screwKind', 'Kind of screw', SCREW_KIND_WORDS, true),
    {
      entry: 'text',
      key: 'screwFamily',
      label: 'Screw family',
      required: true,
      hint: 'Shared by screws alike in all but length.',
    },
    choice('threadForm', 'Thread form', THREAD_FORM_WORDS),
    mm('threadUm', 'Thread diameter'),
    mm('coreUm', 'Core diameter'),
    mm('pitchUm', 'Pitch'),
    mm('lengthUm', 'Overall length', 'Head included.'),
    mm('threadLengthUm', 'Thread length', 'Empty where it is threaded throughout.'),
    mm('shaftUm', 'Smooth shaft diameter'),
    choice('head', 'Head', HEAD_WORDS),
    mm('headUm', 'Head diameter'),
    family,
    { entry: 'drive', key: 'drive', label: 'Drive' },
    choice('tip', 'Tip', TIP_WORDS),
    mm('cannulationUm', 'Cannulation'),
    torque,
    { entry: 'yesNo', key: 'countersinkStated', label: 'Countersink asked for' },
  ],
  washer: [mm('innerUm', 'Inner diameter'), mm('outerUm', 'Outer diameter')],
  drillBit: [
    mm('diameterUm', 'Diameter'),
    mm('lengthUm', 'Length'),
    coupling(),
    mm('cannulationUm', 'Cannulation'),
  ],
  drillSleeve: [
    choice('form', 'Form', SLEEVE_FORM_WORDS, true),
    mm('lengthUm', 'Length'),
    {
      entry: 'textList',
      key: 'onlyForPlates',
      label: 'Only for these plates',
      hint: 'Codes with commas; empty when it is not restricted.',
    },
    { entry: 'ends', key: 'ends', label: 'Ends' },
  ],
  tap: [
    choice('threadForm', 'Thread form', THREAD_FORM_WORDS),
    mm('threadUm', 'Thread diameter'),
    mm('lengthUm', 'Length'),
    coupling(),
  ],
  countersink: [mm('headUm', 'Head it makes room for'), mm('pinUm', 'Pin'), coupling()],
  depthGauge: [
    mm('fromUm', 'Measures from'),
    mm('toUm', 'Measures to'),
    mm('hookUm', 'Hook width'),
    {
      entry: 'mmList',
      key: 'forThreadsUm',
      label: 'Screw threads its scale is for',
      unknown: true,
      hint: 'Several with commas: 2.7, 3.5',
    },
  ],
  driver: [
    { entry: 'drive', key: 'drive', label: 'Drive' },
    mm('lengthUm', 'Length'),
    { entry: 'flag', key: 'fixedHandle', label: 'Fixed handle' },
    coupling(),
    { entry: 'yesNo', key: 'holdsScrew', label: 'Holds the screw' },
    mm('cannulationUm', 'Cannulation'),
  ],
  handle: [
    choice('form', 'Form', HANDLE_FORM_WORDS, true),
    { entry: 'couplings', key: 'takes', label: 'Shanks it takes' },
  ],
  torqueLimiter: [
    torque,
    { entry: 'couplings', key: 'takes', label: 'Shanks it takes' },
    { entry: 'flag', key: 'fixedHandle', label: 'Fixed handle' },
    coupling('Its own shank'),
  ],
  guideWire: [
    mm('diameterUm', 'Diameter'),
    mm('lengthUm', 'Length'),
    { entry: 'yesNo', key: 'threadedTip', label: 'Threaded tip' },
  ],
  reductionForceps: [choice('jaw', 'Jaws', JAW_WORDS), mm('lengthUm', 'Length')],
  plateBender: [
    choice('form', 'Form', BENDER_FORM_WORDS),
    mm('takesThicknessUm', 'Takes plates up to this thickness'),
    mm('takesWidthUm', 'Takes plates up to this width'),
  ],
  holder: [choice('holds', 'Holds', HOLDS_WORDS), mm('lengthUm', 'Length')],
  rack: [
    { entry: 'whole', key: 'rows', label: 'Rows', required: true },
    { entry: 'whole', key: 'columns', label: 'Columns', required: true },
    mm('forThreadUm', 'For screws of thread'),
    mm('lengthUm', 'Length'),
    mm('widthUm', 'Width'),
    mm('heightUm', 'Height'),
  ],
  basket: [mm('lengthUm', 'Length'), mm('widthUm', 'Width'), mm('heightUm', 'Height')],
  container: [mm('lengthUm', 'Length'), mm('widthUm', 'Width'), mm('heightUm', 'Height')],
  generalInstrument: [{ entry: 'text', key: 'purpose', label: 'What it is for' }, mm('lengthUm', 'Length')],
  consumable: [{ entry: 'text', key: 'purpose', label: 'What it is for' }],
};

/** The name a field has in the form: dimensions in millimetres, costs in pounds. */
export function formName(key: string): string {
  return key.replace(/Um$/, 'Mm').replace(/Pence$/, 'Pounds');
}

/** A problem's path in the item as the dotted name of its field in the form. */
export function formPath(path: readonly (string | number)[]): string {
  const [top, second, third] = path;
  if (top === 'drive') return second === undefined || second === 'form' ? 'drive.form' : 'drive.size';
  if (top === 'coupling') return second === 'sizeUm' ? 'coupling.sizeMm' : 'coupling.form';
  if (top === 'takesThreadsUm' || top === 'forThreadsUm' || top === 'onlyForPlates') return formName(top);
  const kept = top === 'ends' && typeof third === 'string' ? path.slice(0, 3) : path;
  return kept.map((part) => (typeof part === 'string' ? formName(part) : String(part))).join('.');
}
