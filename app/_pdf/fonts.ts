import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import PDFDocument from 'pdfkit';
import type { TextSize } from '@/lib/documents/sheet';

/** DejaVu from its package, by the fonts' own names: embedded, and it has every sign the sheets use. */
export const FONTS = {
  regular: 'DejaVuSansCondensed',
  bold: 'DejaVuSansCondensed-Bold',
  title: 'DejaVuSerifCondensed-Bold',
} as const;

export type FontName = keyof typeof FONTS;

/** A font as pdfkit has read it. */
type ReadFont = PDFKit.Mixins.PDFFontSource;

const kept = new Map<FontName, ReadFont>();

/**
 * The fonts, read once in the life of the process: reading takes longer than drawing a sheet. pdfkit takes a font it
 * has already read; a document that is never written is what reads it. The files are found from the working folder,
 * because a bundler must not look into them.
 */
export function readFont(name: FontName): ReadFont {
  const known = kept.get(name);
  if (known) return known;
  const file = readFileSync(
    join(process.cwd(), 'node_modules', 'dejavu-fonts-ttf', 'ttf', `${FONTS[name]}.ttf`),
  );
  const reader = new PDFDocument({ font: file as unknown as string, autoFirstPage: false });
  const { font } = (reader as unknown as { _font: { font: ReadFont } })._font;
  kept.set(name, font);
  return font;
}

/** Height of DejaVu's capitals as a share of the type size (OS/2 table, sCapHeight 1493 of 2048). */
export const CAP_HEIGHT = 1493 / 2048;

/** Points. `key` has capitals of 4.03 mm. */
export const TYPE_POINTS: Record<TextSize, number> = { key: 15.7, large: 11.5, body: 9, small: 7.2 };

/** Baseline to baseline as a share of the type size. */
export const LEADING = 1.22;
