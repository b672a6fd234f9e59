/** Invented makers. The first makes implants in steel, the second in a titanium alloy, the third only instruments. */
export const MAKERS = {
  carrowby: {
    id: 'maker_carrowby',
    name: 'Carrowby Implants',
    codePrefix: 'CR',
    implantMaterial: 'iso5832-1',
  },
  sallowfen: {
    id: 'maker_sallowfen',
    name: 'Sallowfen Surgical',
    codePrefix: 'SF',
    implantMaterial: 'iso5832-11',
  },
  pelham: {
    id: 'maker_pelham-tarn',
    name: 'Pelham Tarn Instruments',
    codePrefix: 'PT',
    implantMaterial: null,
  },
} as const;

export type MakerKey = keyof typeof MAKERS;
