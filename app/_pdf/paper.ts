/** Measures of the page. Points are pdfkit's unit, 72 to the inch; millimetres are of paper. */

export const mm = (millimetres: number): number => (millimetres * 72) / 25.4;

export type PaperSize = 'a4' | 'letter';

/** Width and height in points. A4: ISO 216, 210 × 297 mm. Letter: 8.5 × 11 inches. */
export const PAPER_SIZES: Record<PaperSize, [number, number]> = {
  a4: [mm(210), mm(297)],
  letter: [612, 792],
};

export const MARGIN = mm(12);

/** One dot of a 203 dpi label printer, the coarsest the record code must survive. */
export const DOT = 72 / 203;

export const INK = '#000000';
export const PAPER = '#ffffff';
