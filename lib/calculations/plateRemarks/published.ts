import type { RemarkedPlate } from './schema';

/**
 * A published range with its source; every one is advisory, and quoted from memory until a person has confirmed it.
 * Some are published as a soft limit ("more than 2 to 3"): `from` and `to` are then its two ends.
 */
export interface PublishedRange {
  sense: 'atLeast' | 'atMost' | 'between';
  from: number;
  to: number;
  source: string;
  fromMemory: boolean;
}

const GAUTIER = 'Gautier & Sommer, Injury 2003;34 Suppl 2:B63';
const STOFFEL = 'Stoffel et al., Injury 2003;34 Suppl 2:B11';

const memory = (
  sense: PublishedRange['sense'],
  from: number,
  to: number,
  source: string,
): PublishedRange => ({
  sense,
  from,
  to,
  source,
  fromMemory: true,
});

type Ranges = Partial<Record<NonNullable<RemarkedPlate['principle']>, PublishedRange>>;

/**
 * By the principle stated: a bridged fracture is read as comminuted, a compressed one as simple. For the other
 * principles the sources give no range, and only the figure is shown.
 */
export const PUBLISHED: Record<'spanRatio' | 'density' | 'screws' | 'cortices' | 'freeHoles', Ranges> = {
  spanRatio: { bridging: memory('atLeast', 2, 3, GAUTIER), compression: memory('atLeast', 8, 10, GAUTIER) },
  density: { bridging: memory('atMost', 0.4, 0.5, GAUTIER) },
  screws: { bridging: memory('atLeast', 2, 2, GAUTIER), compression: memory('atLeast', 2, 2, GAUTIER) },
  cortices: { bridging: memory('atLeast', 4, 4, GAUTIER), compression: memory('atLeast', 3, 3, GAUTIER) },
  freeHoles: { bridging: memory('between', 2, 4, STOFFEL) },
};

export const NO_RANGE_SOURCE = {
  spanRatio: GAUTIER,
  density: GAUTIER,
  screws: GAUTIER,
  cortices: GAUTIER,
  freeHoles: STOFFEL,
};
export const POOR_BONE_SOURCE = GAUTIER;
export const COMMON_PRACTICE = 'common practice, no source';
