import bwipjs from 'bwip-js/node';
import { GS } from '@/lib/calculations/identifier/gs1/separators';

/** FNC1 first says GS1; FNC1 later is what arrives as a separator. */
const withFnc1 = (text: string): string => `^FNC1${text.replaceAll('^', '^^').replaceAll(GS, '^FNC1')}`;

/** A DataMatrix (ISO/IEC 16022) of the text as a GS1 carrier: its size and its dark modules. */
export function matrixModules(text: string): {
  columns: number;
  rows: number;
  dark: { x: number; y: number }[];
} {
  const [raw] = bwipjs.raw({
    bcid: 'datamatrix',
    text: withFnc1(text),
    parsefnc: true,
  }) as unknown as { pixs: number[]; pixx: number; pixy: number }[];
  if (!raw) throw new Error('no symbol was made');
  const { pixs, pixx, pixy } = raw;
  const dark = Array.from(pixs).flatMap((pixel, at) =>
    pixel === 1 ? [{ x: at % pixx, y: Math.floor(at / pixx) }] : [],
  );
  return { columns: pixx, rows: pixy, dark };
}

/** A Code 128 (ISO/IEC 15417) of the text as a GS1 carrier: widths of bars and spaces, a bar first. */
export function lineModules(text: string): { widths: number[] } {
  const [raw] = bwipjs.raw({ bcid: 'code128', text: withFnc1(text), parsefnc: true }) as unknown as {
    sbs: number[];
  }[];
  if (!raw) throw new Error('no symbol was made');
  return { widths: Array.from(raw.sbs) };
}
