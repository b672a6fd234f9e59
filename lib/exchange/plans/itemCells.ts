import { blankDraft, draftFromItem, fieldsOf, type ItemDraft } from '../../catalogue/form/draft';
import { formName, formPath } from '../../catalogue/form/fields';
import type { Coupling, Item, ItemKind } from '../../catalogue/item';
import { COUPLING_FORM_WORDS } from '../../wording/catalogue';
import { headingKey } from '../list';
import { catalogueList } from '../lists/catalogue';
import { readNumber } from '../numbers';

/** An item as the cells of its row, each in the one way the program writes it. */
export function cellsOfItem(item: Item, makerName: string): Record<string, string> {
  const draft = draftFromItem(item);
  const cells: Record<string, string> = { kind: item.kind };
  for (const { key } of catalogueList.columns) {
    if (key === 'kind') continue;
    if (key === 'makerId') cells[key] = makerName;
    else if (key === 'takes') cells[key] = takesText(draft);
    else cells[key] = draft[key] ?? '';
  }
  return cells;
}

function takesText(draft: ItemDraft): string {
  const count = Number(draft['takes.count'] ?? 0);
  return Array.from({ length: count }, (_, at) => {
    const form = draft[`takes.${at}.form`] as Coupling['form'];
    return `${COUPLING_FORM_WORDS[form]} ${draft[`takes.${at}.sizeMm`]}`;
  }).join('; ');
}

/** The form of an item after some cells were put in. `takesFault`: its shanks could not be read. */
export function draftWithCells(
  kind: ItemKind,
  before: Item | null,
  cells: Readonly<Record<string, string>>,
): { draft: ItemDraft; takesFault: boolean } {
  const draft: ItemDraft = before
    ? draftFromItem(before)
    : { ...blankDraft(kind), packMultiple: '', partsPerPiece: '' };
  let takesFault = false;
  for (const [key, text] of Object.entries(cells)) {
    if (key === 'kind') continue;
    if (key !== 'takes') draft[key] = text;
    else takesFault = !putTakes(draft, text);
  }
  if (kind === 'drillSleeve') draft['ends.count'] = hasSecondEnd(draft) ? '2' : '1';
  return { draft, takesFault };
}

const hasSecondEnd = (draft: ItemDraft) =>
  Object.entries(draft).some(([key, text]) => key.startsWith('ends.1.') && text !== '');

/** Shanks as `hexagonal shank 6.5; wire 2`; whether all of them could be read. */
function putTakes(draft: ItemDraft, text: string): boolean {
  for (const key of Object.keys(draft)) if (key.startsWith('takes.')) delete draft[key];
  const parts = text
    .split(/[;|]/)
    .map((part) => part.trim())
    .filter(Boolean);
  draft['takes.count'] = String(parts.length);
  return parts.every((part, at) => {
    const [, words = '', size = ''] = /^(.+?)\s+([\d.,]+)(?:\s*mm)?$/.exec(part) ?? [];
    const form = Object.entries(COUPLING_FORM_WORDS).find(
      ([name, word]) => headingKey(name) === headingKey(words) || headingKey(word) === headingKey(words),
    );
    const read = readNumber(size, null);
    if (!form || !read.ok) return false;
    draft[`takes.${at}.form`] = form[0];
    draft[`takes.${at}.sizeMm`] = read.text;
    return true;
  });
}

/** Columns that say something of one kind. */
export function columnsOfKind(kind: ItemKind): ReadonlySet<string> {
  const own = new Set<string>(['kind', 'takes', 'code', 'makerId']);
  for (const field of fieldsOf(kind)) {
    switch (field.entry) {
      case 'drive':
        own.add('drive.form').add('drive.size');
        break;
      case 'coupling':
        own.add(`${field.key}.form`).add(`${field.key}.sizeMm`);
        break;
      case 'ends':
        for (const { key } of catalogueList.columns) if (key.startsWith('ends.')) own.add(key);
        break;
      case 'holes':
        break;
      default:
        own.add(formName(field.key));
    }
  }
  if (!fieldsOf(kind).some(({ entry }) => entry === 'couplings')) own.delete('takes');
  return own;
}

/** Flags of a kind: they are always known, so a new item must state them. */
export const flagsOf = (kind: ItemKind): string[] =>
  fieldsOf(kind).flatMap(({ entry, key }) => (entry === 'flag' ? [key] : []));

/** The column in which a problem of an item lies; `null` where it lies in none, such as in a hole. */
export function columnOfPath(path: readonly (string | number)[]): string | null {
  const [top] = path;
  if (top === 'holes' || top === undefined) return null;
  if (top === 'takes') return 'takes';
  return formPath(path);
}
