import type { Drive } from '@/lib/catalogue/item';
import type { ScrewEntry } from './entry';
import type { MakerKey } from './makers';

/** Everything screws of one family share; lengths in millimetres. `null` is not stated by the maker. */
export interface ScrewFamily {
  maker: MakerKey;
  /** Begins every code; the length follows. */
  codeStem: string;
  family: string;
  screwKind: ScrewEntry['screwKind'];
  threadForm: ScrewEntry['threadForm'];
  threadMm: number;
  coreMm: number | null;
  shaftMm?: number;
  /** Of partially threaded screws; the others are threaded up to the head. */
  threadLengthMm?: number;
  pitchMm: number | null;
  head: ScrewEntry['head'];
  headMm: number;
  lockingFamily?: string;
  drive: Drive;
  tip: NonNullable<ScrewEntry['tip']>;
  cannulationMm?: number;
  torqueNmm?: number;
  countersinkStated: boolean | null;
  lengthsMm: number[];
  pencePiece: number;
  suppliedSterile?: boolean;
  status?: ScrewEntry['status'];
}

const hexagon = (mm: number): Drive => ({ form: 'hexagonSocket', acrossFlatsUm: mm * 1000 });
const hexalobular = (number: number): Drive => ({ form: 'hexalobular', number });

/** Every length from one to another in equal steps. */
const lengths = (from: number, to: number, step: number) =>
  Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, index) => from + index * step);

// HA and HB: threads, cores, pitches, heads and hexagons as ISO 5835 has them (thread and core of HA 3.5, HA 4.5 and
// HB 6.5 seen in public copies, the rest from memory of the standard).
const HA15 = {
  threadForm: 'HA',
  threadMm: 1.5,
  coreMm: 1.1,
  pitchMm: 0.5,
  head: 'spherical',
  headMm: 3,
} as const;
const HA20 = {
  threadForm: 'HA',
  threadMm: 2,
  coreMm: 1.3,
  pitchMm: 0.6,
  head: 'spherical',
  headMm: 4,
} as const;
const HA27 = {
  threadForm: 'HA',
  threadMm: 2.7,
  coreMm: 1.9,
  pitchMm: 1,
  head: 'spherical',
  headMm: 5,
} as const;
const HA35 = {
  threadForm: 'HA',
  threadMm: 3.5,
  coreMm: 2.4,
  pitchMm: 1.25,
  head: 'spherical',
  headMm: 6,
} as const;
const HA40 = {
  threadForm: 'HA',
  threadMm: 4,
  coreMm: 2.9,
  pitchMm: 1.5,
  head: 'spherical',
  headMm: 6,
} as const;
const HA45 = {
  threadForm: 'HA',
  threadMm: 4.5,
  coreMm: 3,
  pitchMm: 1.75,
  head: 'spherical',
  headMm: 8,
} as const;
const HB40 = {
  threadForm: 'HB',
  threadMm: 4,
  coreMm: 1.9,
  pitchMm: 1.75,
  head: 'spherical',
  headMm: 6,
} as const;
const HB65 = {
  threadForm: 'HB',
  threadMm: 6.5,
  coreMm: 3,
  pitchMm: 2.75,
  head: 'spherical',
  headMm: 8,
} as const;

// Locking threads are outside the standards: these sizes and torque classes are common practice, no source.
const LOCK20 = {
  threadForm: 'locking',
  threadMm: 2,
  coreMm: 1.4,
  pitchMm: 0.6,
  head: 'threaded',
  headMm: 3,
  torqueNmm: 400,
} as const;
const LOCK27 = {
  threadForm: 'locking',
  threadMm: 2.7,
  coreMm: 1.9,
  pitchMm: 1,
  head: 'threaded',
  headMm: 4,
  torqueNmm: 800,
} as const;
const LOCK35 = {
  threadForm: 'locking',
  threadMm: 3.5,
  coreMm: 2.7,
  pitchMm: 0.8,
  head: 'threaded',
  headMm: 5.2,
  torqueNmm: 1500,
} as const;
const LOCK50 = {
  threadForm: 'locking',
  threadMm: 5,
  coreMm: 4.2,
  pitchMm: 1,
  head: 'threaded',
  headMm: 6.6,
  torqueNmm: 4000,
} as const;

const cortical = { screwKind: 'cortical' } as const;
const steelCortical = { ...cortical, maker: 'carrowby', countersinkStated: true } as const;
const titaniumCortical = {
  ...cortical,
  maker: 'sallowfen',
  tip: 'selfTapping',
  countersinkStated: false,
} as const;
const locking = { screwKind: 'locking', tip: 'selfTapping', countersinkStated: false } as const;
const cancellous = { maker: 'carrowby', tip: 'blunt', countersinkStated: false } as const;

export const SCREW_FAMILIES: ScrewFamily[] = [
  {
    ...steelCortical,
    ...HA15,
    codeStem: 'CR-C15',
    family: 'Carrowby cortical 1.5',
    drive: hexagon(1.5),
    tip: 'selfTapping',
    lengthsMm: lengths(6, 20, 2),
    pencePiece: 1450,
  },
  {
    ...steelCortical,
    ...HA20,
    codeStem: 'CR-C20',
    family: 'Carrowby cortical 2.0',
    drive: hexagon(1.5),
    tip: 'selfTapping',
    lengthsMm: lengths(6, 24, 2),
    pencePiece: 1420,
  },
  {
    ...steelCortical,
    ...HA27,
    codeStem: 'CR-C27',
    family: 'Carrowby cortical 2.7',
    drive: hexagon(2.5),
    tip: 'selfTapping',
    lengthsMm: lengths(8, 40, 2),
    pencePiece: 1250,
  },
  {
    ...steelCortical,
    ...HA35,
    codeStem: 'CR-C35',
    family: 'Carrowby cortical 3.5',
    drive: hexagon(2.5),
    tip: 'selfTapping',
    lengthsMm: [...lengths(10, 40, 2), ...lengths(45, 70, 5)],
    pencePiece: 1200,
  },
  {
    ...steelCortical,
    ...HA40,
    codeStem: 'CR-C40',
    family: 'Carrowby cortical 4.0',
    drive: hexagon(2.5),
    tip: 'blunt',
    lengthsMm: lengths(20, 40, 2),
    pencePiece: 1300,
  },
  {
    ...steelCortical,
    ...HA45,
    codeStem: 'CR-C45',
    family: 'Carrowby cortical 4.5',
    drive: hexagon(3.5),
    tip: 'blunt',
    lengthsMm: lengths(14, 60, 2),
    pencePiece: 1350,
  },
  // the smooth shaft of the 4.0 partial thread: common practice, no source
  {
    ...cancellous,
    ...HB40,
    screwKind: 'cancellousFull',
    codeStem: 'CR-F40',
    family: 'Carrowby cancellous 4.0 full',
    drive: hexagon(2.5),
    lengthsMm: [...lengths(10, 30, 2), ...lengths(35, 60, 5)],
    pencePiece: 1380,
  },
  {
    ...cancellous,
    ...HB40,
    screwKind: 'cancellousPartial',
    shaftMm: 2.9,
    threadLengthMm: 14,
    codeStem: 'CR-H40',
    family: 'Carrowby cancellous 4.0 partial',
    drive: hexagon(2.5),
    lengthsMm: [...lengths(20, 30, 2), ...lengths(35, 60, 5)],
    pencePiece: 1410,
  },
  {
    ...cancellous,
    ...HB65,
    screwKind: 'cancellousFull',
    codeStem: 'CR-F65',
    family: 'Carrowby cancellous 6.5 full',
    drive: hexagon(3.5),
    lengthsMm: lengths(25, 90, 5),
    pencePiece: 1900,
  },
  {
    ...cancellous,
    ...HB65,
    screwKind: 'cancellousPartial',
    shaftMm: 4.5,
    threadLengthMm: 16,
    codeStem: 'CR-H65',
    family: 'Carrowby cancellous 6.5 thread 16',
    drive: hexagon(3.5),
    lengthsMm: lengths(30, 100, 5),
    pencePiece: 1950,
  },
  {
    ...cancellous,
    ...HB65,
    screwKind: 'cancellousPartial',
    shaftMm: 4.5,
    threadLengthMm: 32,
    codeStem: 'CR-J65',
    family: 'Carrowby cancellous 6.5 thread 32',
    drive: hexagon(3.5),
    lengthsMm: lengths(45, 100, 5),
    pencePiece: 1980,
  },
  {
    ...locking,
    ...LOCK35,
    maker: 'carrowby',
    lockingFamily: 'Linnet 3.5',
    codeStem: 'CR-L35',
    family: 'Linnet 3.5 locking',
    drive: hexalobular(15),
    lengthsMm: [...lengths(12, 40, 2), ...lengths(45, 60, 5)],
    pencePiece: 3800,
  },
  {
    ...locking,
    ...LOCK50,
    maker: 'carrowby',
    lockingFamily: 'Linnet 5.0',
    codeStem: 'CR-L50',
    family: 'Linnet 5.0 locking',
    drive: hexalobular(25),
    lengthsMm: [...lengths(14, 50, 2), ...lengths(55, 90, 5)],
    pencePiece: 4400,
  },
  {
    ...locking,
    ...LOCK50,
    tip: 'selfDrillingSelfTapping',
    maker: 'carrowby',
    lockingFamily: 'Linnet 5.0',
    codeStem: 'CR-D50',
    family: 'Linnet 5.0 self-drilling',
    drive: hexalobular(25),
    lengthsMm: [14, 18, 26],
    pencePiece: 4700,
  },
  {
    ...titaniumCortical,
    ...HA20,
    codeStem: 'SF-C20',
    family: 'Sallowfen cortical 2.0',
    drive: hexalobular(6),
    lengthsMm: lengths(6, 24, 2),
    pencePiece: 1780,
  },
  {
    ...titaniumCortical,
    ...HA27,
    codeStem: 'SF-C27',
    family: 'Sallowfen cortical 2.7',
    drive: hexalobular(8),
    lengthsMm: lengths(8, 30, 2),
    pencePiece: 1700,
  },
  {
    ...titaniumCortical,
    ...HA35,
    codeStem: 'SF-C35',
    family: 'Sallowfen cortical 3.5',
    drive: hexalobular(15),
    lengthsMm: [...lengths(10, 40, 2), ...lengths(45, 60, 5)],
    pencePiece: 1650,
  },
  {
    ...titaniumCortical,
    ...HA45,
    codeStem: 'SF-C45',
    family: 'Sallowfen cortical 4.5',
    drive: hexalobular(25),
    lengthsMm: lengths(20, 60, 2),
    pencePiece: 1850,
  },
  {
    ...locking,
    ...LOCK20,
    maker: 'sallowfen',
    lockingFamily: 'Teasel 2.0',
    codeStem: 'SF-L20',
    family: 'Teasel 2.0 locking',
    drive: hexalobular(6),
    lengthsMm: lengths(6, 24, 2),
    pencePiece: 3900,
  },
  {
    ...locking,
    ...LOCK27,
    maker: 'sallowfen',
    lockingFamily: 'Teasel 2.7',
    codeStem: 'SF-L27',
    family: 'Teasel 2.7 locking',
    drive: hexalobular(8),
    lengthsMm: lengths(10, 30, 2),
    pencePiece: 3850,
  },
  {
    ...locking,
    ...LOCK35,
    maker: 'sallowfen',
    lockingFamily: 'Teasel 3.5',
    codeStem: 'SF-L35',
    family: 'Teasel 3.5 locking',
    drive: hexalobular(15),
    lengthsMm: [...lengths(12, 50, 2), 55, 60],
    pencePiece: 4100,
  },
  {
    ...locking,
    ...LOCK35,
    tip: 'selfDrillingSelfTapping',
    maker: 'sallowfen',
    lockingFamily: 'Teasel 3.5',
    codeStem: 'SF-D35',
    family: 'Teasel 3.5 self-drilling',
    drive: hexalobular(15),
    lengthsMm: [10, 12, 14, 16, 18],
    pencePiece: 4300,
  },
  {
    ...locking,
    ...LOCK50,
    maker: 'sallowfen',
    lockingFamily: 'Teasel 5.0',
    codeStem: 'SF-L50',
    family: 'Teasel 5.0 locking',
    drive: hexalobular(25),
    lengthsMm: [...lengths(20, 50, 2), ...lengths(55, 90, 5)],
    pencePiece: 4600,
  },
  // cannulated sizes: common practice, no source
  {
    maker: 'sallowfen',
    screwKind: 'cannulated',
    threadForm: 'other',
    threadMm: 4,
    coreMm: 2.6,
    shaftMm: 3,
    threadLengthMm: 10,
    pitchMm: 1.75,
    head: 'spherical',
    headMm: 6,
    drive: hexagon(2.5),
    tip: 'selfTapping',
    cannulationMm: 1.35,
    countersinkStated: true,
    codeStem: 'SF-N40',
    family: 'Sallowfen cannulated 4.0',
    lengthsMm: lengths(20, 50, 2),
    pencePiece: 5200,
    suppliedSterile: true,
  },
  // conical heads of ISO 9268, a line the maker gave up; only the thread is from memory, the rest was never stated
  {
    maker: 'carrowby',
    screwKind: 'cortical',
    threadForm: 'HC',
    threadMm: 3.5,
    coreMm: null,
    pitchMm: null,
    head: 'conicalPlain',
    headMm: 6,
    drive: { form: 'crossSlot', sizeUm: 1000 },
    tip: 'blunt',
    countersinkStated: null,
    codeStem: 'CR-K35',
    family: 'Carrowby conical 3.5',
    lengthsMm: [16, 20, 24, 28],
    pencePiece: 900,
    status: 'withdrawn',
  },
];
