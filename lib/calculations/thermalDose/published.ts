import type { HoldingBand } from './schema';

/** ISO 15883-1, Annex B: z = 10 K, reference 80 °C, from 65 °C up. */
export const A0 = { referenceC: 80, zK: 10, fromC: 65 } as const;

/** F0: z = 10 K. The reference is 121.1 °C (250 °F); 121 °C is seen too, so it is always stated. */
export const F0_Z_K = 10;
export const DEFAULT_F0_REFERENCE_C = 121.1;

/** Common practice, no source: recorders log every second to every ten. */
export const DEFAULT_LONGEST_GAP_SECONDS = 10;

/** Holding bands as published, offered where a programme is written. */
export const PUBLISHED_BANDS: readonly (HoldingBand & { source: string; fromMemory: boolean })[] = [
  { lowC: 134, highC: 137, holdSeconds: 180, source: 'EN 285, ISO 17665', fromMemory: true },
  { lowC: 126, highC: 129, holdSeconds: 600, source: 'EN 285, ISO 17665', fromMemory: true },
  { lowC: 121, highC: 124, holdSeconds: 900, source: 'EN 285, ISO 17665', fromMemory: true },
  {
    lowC: 132,
    highC: null,
    holdSeconds: 240,
    source: 'CDC, Guideline for Disinfection and Sterilization, Table 7',
    fromMemory: false,
  },
];
