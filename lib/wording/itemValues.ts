import { fieldsOf } from '../catalogue/form/draft';
import type { ItemField } from '../catalogue/form/fields';
import type { Coupling, Drive, Item } from '../catalogue/item';
import { writeMm } from '../quantities/length';
import { couplingWords, driveWords } from './catalogue';

/** One value of an item, for a list of terms; `null` is not stated. */
export interface ItemValue {
  key: string;
  term: string;
  value: string | null;
  unit?: string;
}

/** Every value of an item with its unit, in the form's order; holes and ends have tables of their own. */
export function itemValues(item: Item, maker: string): ItemValue[] {
  return fieldsOf(item.kind).flatMap((field) => {
    if (field.entry === 'holes' || field.entry === 'ends' || field.key === 'code' || field.key === 'name')
      return [];
    const value = (item as unknown as Record<string, unknown>)[field.key];
    if (value === null && doesNotApply(item, field.key)) return [];
    if (field.key === 'makerId') return [{ key: field.key, term: field.label, value: maker }];
    return [{ key: field.key, term: field.label, ...written(field, value) }];
  });
}

/** An empty field that says nothing is missing, because a thing of this form has no such value. */
function doesNotApply(item: Item, key: string): boolean {
  if (key === 'nickname' || key === 'lookAlikeOf') return true;
  if (key === 'reprocessingLimit') return item.use === 'singleUse';
  if (key === 'onlyForPlates') return true;
  if (item.kind === 'plate' && key === 'headWidthUm')
    return !item.holes.some(({ segment }) => segment === 'head');
  if (item.kind === 'screw') {
    const plain = item.head !== null && item.head !== 'threaded';
    if (key === 'lockingFamily' || key === 'torqueNmm') return plain;
    if (key === 'shaftUm' || key === 'threadLengthUm') return item.screwKind !== 'cancellousPartial';
    if (key === 'cannulationUm') return item.screwKind !== 'cannulated';
  }
  if (key === 'cannulationUm') return true;
  if (key === 'coupling') return 'fixedHandle' in item && item.fixedHandle;
  return false;
}

function written(field: ItemField, value: unknown): { value: string | null; unit?: string } {
  if (value === null || value === undefined) return { value: null };
  switch (field.entry) {
    case 'mm':
      return { value: writeMm(value as number), unit: 'mm' };
    case 'whole':
      return field.unit === undefined
        ? { value: String(value) }
        : { value: String(value), unit: unitFor(field.unit, value as number) };
    case 'pounds':
      return { value: `£${((value as number) / 100).toFixed(2)}` };
    case 'choice':
      return { value: field.words[String(value)] ?? String(value) };
    case 'yesNo':
    case 'flag':
      return { value: value ? 'yes' : 'no' };
    case 'mmList': {
      const list = value as number[];
      return list.length === 0 ? { value: null } : { value: list.map(writeMm).join(', '), unit: 'mm' };
    }
    case 'textList':
      return { value: (value as string[]).join(', ') };
    case 'drive':
      return { value: driveWords(value as Drive) };
    case 'coupling':
      return { value: couplingWords(value as Coupling) };
    case 'couplings':
      return { value: (value as Coupling[]).map(couplingWords).join(', ') };
    default:
      return { value: String(value) };
  }
}

/** `1 piece`, `2 pieces`; units that are signs stay as they are. */
function unitFor(unit: string, count: number): string {
  return count === 1 ? unit.replace(/^(piece|part|cycle)s$/, '$1') : unit;
}
