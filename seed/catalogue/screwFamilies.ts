import type { Drive } from '@/lib/catalogue/item';
import type { ScrewEntry } from './entry';
import type { MakerKey } from './makers';
import { STEEL_SCREWS } from './screwFamiliesSteel';
import { TITANIUM_SCREWS } from './screwFamiliesTitanium';

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

/** Every screw family of the demo. */
export const SCREW_FAMILIES: ScrewFamily[] = [...STEEL_SCREWS, ...TITANIUM_SCREWS];
