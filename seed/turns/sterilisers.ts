/** Holding bands and times as EN 285 and HTM 01-01 give them for porous loads (from memory). */
const WRAPPED_134 = { name: '134 °C wrapped', bandMillicelsius: [134_000, 137_000], holdSeconds: 180 };
const WRAPPED_121 = { name: '121 °C wrapped', bandMillicelsius: [121_000, 124_000], holdSeconds: 900 };

export const STERILISERS = [
  { id: 'steriliser_1', name: 'Steriliser 1', programmes: [WRAPPED_134, WRAPPED_121] },
  { id: 'steriliser_2', name: 'Steriliser 2', programmes: [WRAPPED_134] },
] as const;

export const USUAL_PROGRAMME = WRAPPED_134.name;
