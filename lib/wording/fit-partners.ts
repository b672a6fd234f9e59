import type { Partner } from '../fit/try-pair';

/** What can stand against an item when it is no other item. */
export const PARTNER_WORDS: Record<Partner, string> = {
  bone: 'Bare bone',
  'limb-left': 'A left limb',
  'limb-right': 'A right limb',
};
