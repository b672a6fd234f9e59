import { z } from 'zod';
import type { MustHaveClass } from '@/lib/sets/configuration';
import type { SettingValue } from '@/lib/settings/local';

/** What is agreed with a maker, or holds for one item; `null` falls back to the maker's, then to the hospital's. */
export const supplyTerms = z.strictObject({
  leadDays: z.number().int().min(0).max(730).nullable(),
  leadSdDays: z.number().int().min(0).max(180).nullable(),
  reviewDays: z.number().int().min(1).max(365).nullable(),
  servicePercent: z.number().min(50).max(99.9).multipleOf(0.1).nullable(),
  /** Days a piece is good for as it comes. */
  shelfLifeDays: z.number().int().min(1).max(7_300).nullable(),
  /** Kept on consignment: what is used is replaced by its owner on a usage order, and never bought. */
  consigned: z.boolean().nullable().default(null),
});
export type SupplyTerms = z.output<typeof supplyTerms>;

export interface TermsInForce {
  /** `null`: nobody has said how long it takes. */
  leadDays: number | null;
  leadSdDays: number;
  reviewDays: number;
  service: number;
  shelfLifeDays: number | null;
  /** Replaced by its owner, never bought; where nobody stated it, it is bought. */
  consigned: boolean;
}

type Restock = SettingValue<'restock'>;

/** The item's own terms, else its maker's, else the hospital's; a lead or shelf life nobody stated stays unknown. */
export function termsFor(
  item: SupplyTerms | undefined,
  maker: SupplyTerms | undefined,
  settings: Restock,
  mustHaveClass: MustHaveClass | null,
): TermsInForce {
  const own = <K extends keyof SupplyTerms>(key: K) => item?.[key] ?? maker?.[key] ?? null;
  return {
    leadDays: own('leadDays'),
    leadSdDays: own('leadSdDays') ?? 0,
    reviewDays: own('reviewDays') ?? settings.reviewDays,
    service: (own('servicePercent') ?? perMilleOf(settings, mustHaveClass) / 10) / 100,
    shelfLifeDays: own('shelfLifeDays'),
    consigned: own('consigned') ?? false,
  };
}

/** `null`: in no set, kept on the shelf alone. */
function perMilleOf(settings: Restock, mustHaveClass: MustHaveClass | null): number {
  switch (mustHaveClass) {
    case 1:
      return settings.class1PerMille;
    case 2:
      return settings.class2PerMille;
    case 3:
      return settings.class3PerMille;
    case 4:
      return settings.class4PerMille;
    case null:
      return settings.noClassPerMille;
  }
}
