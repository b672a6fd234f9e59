import { z } from 'zod';

/**
 * What a hospital decides for itself. Each has a default that is shown as such, and an owner once it is set. Kept in the
 * `settings` table under its key; `parseSetting` fills in what the hospital has not set.
 */
export const LOCAL_SETTINGS = {
  /** Sterility that ends by date, or only by what happens to the pack (event-related). */
  sterility: z.object({
    policy: z.enum(['useBy', 'eventRelated']).default('useBy'),
    /** Days from acceptance to use-by, where the policy is by date. */
    useByDays: z.number().int().min(1).max(1825).default(180),
  }),
  loads: z.object({
    /** Implants wait for the biological result of their load. */
    implantsAwaitBiological: z.boolean().default(true),
    /** Indicator kinds every load must have passed. */
    requiredIndicators: z
      .array(z.enum(['chemical', 'biological', 'airRemoval', 'printedRecord']))
      .default(['chemical', 'printedRecord']),
  }),
  bench: z.object({
    /** Which counts a second person checks without seeing the first one's figures. */
    secondCheck: z.enum(['always', 'implantsAndShort', 'never']).default('always'),
    /** Minutes after which an entry counts as late. */
    lateAfterMinutes: z.number().int().min(1).max(1440).default(10),
  }),
  signIn: z.object({
    idleMinutes: z.number().int().min(1).max(720).default(30),
    absoluteHours: z.number().int().min(1).max(24).default(12),
  }),
} as const;

export type SettingKey = keyof typeof LOCAL_SETTINGS;
export type SettingValue<K extends SettingKey> = z.output<(typeof LOCAL_SETTINGS)[K]>;

/** The hospital's value with defaults where it has set none. Throws where what is stored is not of its shape. */
export function parseSetting<K extends SettingKey>(key: K, stored: unknown): SettingValue<K> {
  return LOCAL_SETTINGS[key].parse(stored ?? {}) as SettingValue<K>;
}
