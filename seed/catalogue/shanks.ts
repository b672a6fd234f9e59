import type { Coupling } from '@/lib/catalogue/item';

/** Shanks and sockets of the demo's instruments; forms and sizes are common practice, no source. */
export const SHANK = {
  mini: { form: 'roundShank', sizeUm: 2350 },
  small: { form: 'flattedShank', sizeUm: 5000 },
  large: { form: 'flattedShank', sizeUm: 6500 },
  driverSmall: { form: 'hexShank', sizeUm: 4500 },
  driverLarge: { form: 'hexShank', sizeUm: 6500 },
} as const satisfies Record<string, Coupling>;
