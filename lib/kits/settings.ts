import type { ItemKind } from '../catalogue/item';

/** Local settings of the case kit; each is shown where it decides. */
export interface KitSettings {
  /** Instruments of which the kit holds a second piece where the store has one: those that break. */
  backUps: ItemKind[];
  /** Length cover that the top-up aims at, between 0 and 1. */
  targetCover: number;
  /** How long the integer programme may take when the search gives up. */
  timeLimitMs: number;
  /** What a tray of unknown mass is counted as, so that it never looks lighter than a weighed one. */
  unknownMassGrams: number;
}

export const DEFAULT_KIT_SETTINGS: KitSettings = {
  backUps: ['drillBit'],
  targetCover: 0.95,
  timeLimitMs: 1_500,
  unknownMassGrams: 12_000,
};
