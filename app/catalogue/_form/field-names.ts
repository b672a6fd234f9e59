import { fieldsOf, type ItemDraft } from '@/lib/catalogue/form/draft';
import { formName } from '@/lib/catalogue/form/fields';
import type { ItemKind } from '@/lib/catalogue/item';

/** A field of the form as people call it: `lengthMm` is `Length`, `holes.3.alongMm` is `Hole S4, along`. */
export function fieldName(kind: ItemKind, name: string, draft: ItemDraft): string {
  const [top = '', index, field] = name.split('.');
  const label = fieldsOf(kind).find(({ key }) => formName(key) === top || key === top)?.label ?? top;
  if (index === undefined) return label;
  if (index === 'count') return `${label}, how many`;
  if (field === undefined) return `${label}, ${partName(index)}`;
  if (top === 'holes') return `Hole ${draft[`holes.${index}.id`] || Number(index) + 1}, ${partName(field)}`;
  if (top === 'ends') return `End ${Number(index) + 1}, ${partName(field)}`;
  return `${label} ${Number(index) + 1}, ${partName(field)}`;
}

/** `tiltAlongDegrees` as `tilt along`. */
function partName(field: string): string {
  return field.replace(/(Mm|Degrees)$/, '').replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

/** Where the summary leads to: the field itself, or the first of a list's fields where the list has none of its own. */
export function shownAt(kind: ItemKind, path: string): string {
  if (path === 'ends') return 'ends.0.boreMm';
  if (path === 'takes' && kind !== 'plate') return 'takes.0.form';
  return path;
}
