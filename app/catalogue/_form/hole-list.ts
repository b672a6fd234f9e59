import { HOLE_FIELDS, type HoleField, type ItemDraft } from '@/lib/catalogue/form/draft';

/** The form's list of holes, changed as a whole: adding, removing and moving rows of flat texts. */

export type HoleTexts = Record<HoleField, string>;

export function holeCount(draft: ItemDraft): number {
  const count = Number(draft['holes.count'] ?? '0');
  return Number.isInteger(count) && count > 0 ? Math.min(count, 60) : 0;
}

export function holeAt(draft: ItemDraft, index: number): HoleTexts {
  return Object.fromEntries(
    HOLE_FIELDS.map((field) => [field, draft[`holes.${index}.${field}`] ?? '']),
  ) as HoleTexts;
}

function textsAt(index: number, hole: HoleTexts): ItemDraft {
  return Object.fromEntries(HOLE_FIELDS.map((field) => [`holes.${index}.${field}`, hole[field]]));
}

const FIRST: HoleTexts = {
  id: 'S1',
  segment: 'shaft',
  holeClass: 'round',
  alongMm: '5',
  acrossMm: '0',
  openingMm: '',
  seatMm: '',
  slotMm: '',
  plainSeat: '',
  lockingFamily: '',
  lockingConeDegrees: '',
  tiltAlongDegrees: '0',
  tiltAcrossDegrees: '0',
};

/** `S4` after `S3`; the letter of the segment where the pattern holds no number. */
function nextId(taken: ReadonlySet<string>, letter: string): string {
  for (let number = 1; ; number += 1) if (!taken.has(`${letter}${number}`)) return `${letter}${number}`;
}

/**
 * Adds a hole at the end, made like hole `like` (the last one unless told). Without a place it goes on as far from the
 * last as that is from the one before.
 */
export function withHole(
  draft: ItemDraft,
  place: { alongMm: string; acrossMm: string } | null,
  like?: number,
): ItemDraft {
  const count = holeCount(draft);
  if (count >= 60) return draft;
  const pattern = count === 0 ? FIRST : holeAt(draft, like ?? count - 1);
  const ids = new Set(Array.from({ length: count }, (_, index) => draft[`holes.${index}.id`] ?? ''));
  const letter = pattern.segment === 'head' ? 'H' : 'S';
  const hole = { ...pattern, ...(place ?? onwards(draft, count, pattern)), id: nextId(ids, letter) };
  return { ...draft, ...textsAt(count, hole), 'holes.count': String(count + 1) };
}

function onwards(draft: ItemDraft, count: number, pattern: HoleTexts): { alongMm: string; acrossMm: string } {
  if (count === 0) return { alongMm: FIRST.alongMm, acrossMm: FIRST.acrossMm };
  const last = Number(draft[`holes.${count - 1}.alongMm`]);
  const before = Number(draft[`holes.${count - 2}.alongMm`]);
  const step = count > 1 && last > before ? last - before : 10;
  return { alongMm: mmText((Number.isFinite(last) ? last : 0) + step), acrossMm: pattern.acrossMm };
}

export function withoutHole(draft: ItemDraft, index: number): ItemDraft {
  const count = holeCount(draft);
  if (index >= count) return draft;
  const rest = Array.from({ length: count }, (_, at) => at).filter((at) => at !== index);
  const next: ItemDraft = { ...draft, 'holes.count': String(count - 1) };
  rest.forEach((from, to) => {
    Object.assign(next, textsAt(to, holeAt(draft, from)));
  });
  for (const field of HOLE_FIELDS) delete next[`holes.${count - 1}.${field}`];
  return next;
}

/** A length in mm as the form writes it: to the tenth, without a trailing zero. */
export function mmText(mm: number): string {
  return String(Math.round(mm * 10) / 10).replace(/^-0$/, '0');
}
