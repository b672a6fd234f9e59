import localFont from 'next/font/local';

/**
 * The two families, served from their packages. Only the Latin files are preloaded; the Greek file (σ, Φ and μ in
 * workings) and the extended Latin file (names with Ł, ő …) load when such a letter appears. Each range is split so that
 * a browser never fetches what a page does not show. The faces that stand in until they arrive are in globals.css.
 */

export const sourceSans = localFont({
  src: '../../node_modules/@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2',
  variable: '--font-sans',
  weight: '200 900',
  display: 'swap',
  adjustFontFallback: false,
});

export const sansGreek = localFont({
  src: '../../node_modules/@fontsource-variable/source-sans-3/files/source-sans-3-greek-wght-normal.woff2',
  variable: '--font-sans-greek',
  weight: '200 900',
  preload: false,
  adjustFontFallback: false,
  declarations: [{ prop: 'unicode-range', value: 'U+0370-03FF' }],
});

export const sansMore = localFont({
  src: '../../node_modules/@fontsource-variable/source-sans-3/files/source-sans-3-latin-ext-wght-normal.woff2',
  variable: '--font-sans-more',
  weight: '200 900',
  preload: false,
  adjustFontFallback: false,
  declarations: [{ prop: 'unicode-range', value: 'U+0100-024F, U+1E00-1EFF' }],
});

export const sourceSerif = localFont({
  src: '../../node_modules/@fontsource-variable/source-serif-4/files/source-serif-4-latin-opsz-normal.woff2',
  variable: '--font-serif',
  weight: '200 900',
  display: 'swap',
  adjustFontFallback: false,
});

export const serifGreek = localFont({
  src: '../../node_modules/@fontsource-variable/source-serif-4/files/source-serif-4-greek-wght-normal.woff2',
  variable: '--font-serif-greek',
  weight: '200 900',
  preload: false,
  adjustFontFallback: false,
  declarations: [{ prop: 'unicode-range', value: 'U+0370-03FF' }],
});

export const serifMore = localFont({
  src: '../../node_modules/@fontsource-variable/source-serif-4/files/source-serif-4-latin-ext-wght-normal.woff2',
  variable: '--font-serif-more',
  weight: '200 900',
  preload: false,
  adjustFontFallback: false,
  declarations: [{ prop: 'unicode-range', value: 'U+0100-024F, U+1E00-1EFF' }],
});

/** Class names that put the families' custom properties on `<html>`. */
export const fontVariables = [sourceSans, sansGreek, sansMore, sourceSerif, serifGreek, serifMore]
  .map((font) => font.variable)
  .join(' ');
