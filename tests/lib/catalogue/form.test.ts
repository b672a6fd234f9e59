import { describe, expect, it } from 'vitest';
import { blankDraft, draftFromItem } from '@/lib/catalogue/form/draft';
import { formPath } from '@/lib/catalogue/form/fields';
import { readDraft, sketchDraft } from '@/lib/catalogue/form/read';
import { ITEM_KINDS } from '@/lib/catalogue/item';
import { plateFor, screwFor } from '../../fixtures/catalogueItems';

const fixed = { id: 'item_new', status: 'current' } as const;

function problemsOf(kind: Parameters<typeof readDraft>[0], draft: Record<string, string>) {
  const read = readDraft(kind, draft, fixed);
  return read.ok ? [] : read.problems.map(({ path, message }) => `${formPath(path)}: ${message}`);
}

describe('the item form', () => {
  it.each(ITEM_KINDS)('says what an empty form of a %s lacks, beside its fields', (kind) => {
    const told = problemsOf(kind, blankDraft(kind));
    expect(told).toContain('code: A code is needed.');
    expect(told).toContain('name: A name is needed.');
    expect(told.some((line) => line.startsWith('makerId: '))).toBe(true);
    expect(told.some((line) => line.startsWith('use: '))).toBe(true);
  });

  it('shows what can’t be read, what is not allowed and what does not go together all at once', () => {
    const draft = draftFromItem(
      screwFor({ gtin: '09521234543213', coreUm: 3_900, headUm: 3_000, name: 'x'.repeat(10_000) }),
    );
    const told = problemsOf('screw', {
      ...draft,
      pitchMm: 'about one',
      lengthMm: '-32',
      gtin: '09521234543214',
    });
    expect(told).toEqual(
      expect.arrayContaining([
        'pitchMm: “about one” is not a length: write millimetres, such as 3.5.',
        'lengthMm: Must be more than 0.',
        'name: At most 120 characters.',
        'coreMm: The core diameter (3.9 mm) must be below the thread diameter (3.5 mm).',
        'threadMm: The thread diameter (3.5 mm) is more than the head diameter (3 mm).',
        'gtin: The last digit of this GTIN should be 3: a digit is wrong or two are swapped.',
      ]),
    );
  });

  it('reads a comma as the decimal sign, and an empty field as not stated', () => {
    const read = readDraft('screw', { ...draftFromItem(screwFor()), threadMm: '3,5', coreMm: '' }, fixed);
    expect(read.ok && read.value).toMatchObject({ threadUm: 3_500, coreUm: null });
  });

  it('points at the hole and the field that are wrong', () => {
    const draft = draftFromItem(plateFor());
    const told = problemsOf('plate', {
      ...draft,
      'holes.3.id': 'S1',
      'holes.5.alongMm': '',
      'holes.6.alongMm': '400',
    });
    expect(told).toEqual(
      expect.arrayContaining([
        'holes.3.id: Two holes are called S1: give one of them another id.',
        'holes.5.alongMm: Say where the hole lies.',
        'holes.6.alongMm: S7 lies 400 mm along a plate of 97 mm: move it onto the plate.',
      ]),
    );
  });

  it('refuses a form with more holes than a plate may have', () => {
    const holes = Object.fromEntries(
      Array.from({ length: 61 }, (_, index) => [`holes.${index}.id`, `S${index}`] as const),
    );
    expect(
      problemsOf('plate', { ...draftFromItem(plateFor()), ...holes, 'holes.count': '61' }).length,
    ).toBeGreaterThan(0);
  });

  it('draws from a half-typed form', () => {
    const sketch = sketchDraft('plate', {
      ...blankDraft('plate'),
      shape: 'straightNarrow',
      lengthMm: '80',
      widthMm: '1o',
    });
    expect(sketch).toMatchObject({ kind: 'plate', lengthUm: 80_000, widthUm: null });
  });
});
