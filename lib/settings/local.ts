import { z } from 'zod';
import { DEFAULT_FIT_SETTINGS } from '../fit/rule';
import { DEFAULT_KIT_SETTINGS } from '../kits/settings';
import { plainDate } from '../quantities/plainDate';
import { DEFAULT_SET_SETTINGS } from '../sets/holdings';

/**
 * What a hospital decides for itself. Each has a default that is shown as such, and an owner once it is set. Kept in the
 * `settings` table under its key; `parseSetting` fills in what the hospital has not set. What a field is called, its unit and
 * where its default comes from stands in `fields.ts`, which the compiler asks for.
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
  /** What completeness is judged by. */
  sets: z.object({
    massLimitsGrams: z
      .array(z.number().int().min(500).max(30_000))
      .min(1)
      .max(6)
      .default(DEFAULT_SET_SETTINGS.massLimitsGrams),
    warnAtPercent: z.number().int().min(50).max(100).default(DEFAULT_SET_SETTINGS.warnAtPercent),
  }),
  /** Limits that fit rules refer to by name. */
  fit: z.object({
    sleeveToleranceUm: z.number().int().min(0).max(5_000).default(DEFAULT_FIT_SETTINGS.sleeveToleranceUm),
  }),
  kits: z.object({
    backUps: z
      .array(z.enum(['drillBit', 'tap', 'countersink', 'depthGauge', 'driver', 'torqueLimiter', 'guideWire']))
      .default(['drillBit']),
    targetCover: z.number().min(0.5).max(0.999).default(DEFAULT_KIT_SETTINGS.targetCover),
    timeLimitMs: z.number().int().min(200).max(30_000).default(DEFAULT_KIT_SETTINGS.timeLimitMs),
    unknownMassGrams: z.number().int().min(1_000).max(50_000).default(DEFAULT_KIT_SETTINGS.unknownMassGrams),
  }),
  /** How long the stages of a turn take until the hospital's own turns say, and when a set must stand in theatre. */
  stages: z.object({
    leadMinutes: z.number().int().min(0).max(1_440).default(60),
    comingBackMinutes: z.number().int().min(1).max(2_880).default(60),
    washingMinutes: z.number().int().min(1).max(2_880).default(90),
    benchMinutes: z.number().int().min(1).max(2_880).default(45),
    packedMinutes: z.number().int().min(1).max(2_880).default(30),
    steriliserMinutes: z.number().int().min(1).max(2_880).default(75),
    acceptanceMinutes: z.number().int().min(1).max(2_880).default(45),
    /** What nine turns in ten stay within, in percent of the usual time. */
    longPercent: z.number().int().min(100).max(400).default(150),
  }),
  /** Who gets which set: by which times, and how far ahead. */
  planning: z.object({
    /** A set must be ready in time as it is half of the time, or nine times in ten. */
    planBy: z.enum(['p50', 'p90']).default('p90'),
    /** Less than this between nine-in-ten ready and needed counts as a risk. */
    marginMinutes: z.number().int().min(0).max(1_440).default(30),
    horizonDays: z.number().int().min(1).max(28).default(7),
  }),
  /** What is assumed of an emergency until somebody says otherwise. */
  emergency: z.object({
    neededInMinutes: z.number().int().min(0).max(1_440).default(30),
    caseMinutes: z.number().int().min(10).max(1_440).default(120),
  }),
  bench: z.object({
    /** Which counts a second person checks without seeing the first one's figures. */
    secondCheck: z.enum(['always', 'implantsAndShort', 'never']).default('always'),
    /** Minutes after which an entry counts as late. */
    lateAfterMinutes: z.number().int().min(1).max(1440).default(10),
  }),
  packs: z.object({
    /** What a set above the highest mass limit needs before it is packed: it is not, or somebody states why. */
    overMass: z.enum(['stops', 'needsReason']).default('needsReason'),
    /** How far the scale may differ from what the pieces weigh before it is worth a second look. */
    scaleToleranceGrams: z.number().int().min(0).max(5_000).default(200),
    label: z.enum(['100x50', '75x50', '50x25']).default('100x50'),
  }),
  /** When a loan must be here before it is needed, and the hours that are worked. */
  loans: z.object({
    noticeIn: z.enum(['clockHours', 'workingHours', 'workingDays']).default('workingDays'),
    noticeHours: z.number().int().min(1).max(500).default(48),
    noticeDays: z.number().int().min(1).max(60).default(2),
    dueBy: z.enum(['startOfWork', 'endOfWork']).default('startOfWork'),
    workDays: z
      .array(z.enum(['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday']))
      .default(['monday', 'tuesday', 'wednesday', 'thursday', 'friday']),
    /** Dates on which nobody works, whatever day of the week. */
    holidays: z.array(plainDate).max(400).default([]),
    // noon lies between them, so that work never ends before it begins
    workFromMinutes: z.number().int().min(0).max(720).default(480),
    workUntilMinutes: z.number().int().min(735).max(1_425).default(1_080),
  }),
  /** What things cost and what is counted as waste; `null`: nobody has stated it, and nothing is worked out from it. */
  costs: z.object({
    keepPencePerPiece: z.number().int().min(0).max(1_000_000).nullable().default(null),
    pouchPence: z.number().int().min(0).max(1_000_000).nullable().default(null),
    fetchMinutes: z.number().int().min(0).max(240).nullable().default(null),
    theatrePencePerMinute: z.number().int().min(0).max(1_000_000).nullable().default(null),
    trayPence: z.number().int().min(0).max(10_000_000).nullable().default(null),
    wasteShareOf: z.enum(['opened', 'total']).default('opened'),
    /** In how many of a thousand cases a line of a set may run out. */
    runOutPerThousand: z.number().int().min(1).max(200).default(10),
  }),
  /** How much is kept on the shelf. How long a maker takes is stated with each maker, never assumed. */
  restock: z.object({
    reviewDays: z.number().int().min(1).max(365).default(7),
    class1PerMille: z.number().int().min(500).max(999).default(990),
    class2PerMille: z.number().int().min(500).max(999).default(980),
    class3PerMille: z.number().int().min(500).max(999).default(950),
    class4PerMille: z.number().int().min(500).max(999).default(900),
    noClassPerMille: z.number().int().min(500).max(999).default(950),
    sureOfUsePercent: z.number().int().min(50).max(99).default(90),
    recordWeeks: z.number().int().min(13).max(520).default(104),
    alphaPercent: z.number().int().min(1).max(50).default(10),
    /** What a plain par level would be, for comparison: so many weeks of use. */
    parWeeks: z.number().int().min(1).max(52).default(4),
  }),
  /** The shelves: when a use-by counts as soon, and how often what is counted. */
  stock: z.object({
    soonDays: z.number().int().min(1).max(365).default(28),
    countClassBy: z.enum(['valueOfUse', 'mustHaveClass']).default('valueOfUse'),
    countDaysA: z.number().int().min(1).max(730).default(30),
    countDaysB: z.number().int().min(1).max(730).default(90),
    countDaysC: z.number().int().min(1).max(730).default(180),
    /** Up to the larger of the two, nobody counts again. */
    tolerancePieces: z.number().int().min(0).max(1_000).default(0),
    tolerancePercent: z.number().int().min(0).max(100).default(0),
  }),
  /** Reasons of the hospital's own. */
  reasons: z.object({
    /** Whether a record of use asks why something was wasted before it is closed. */
    askWaste: z.boolean().default(false),
  }),
  calendars: z.object({
    /** Whether a calendar feed, which is read without signing in, names the surgeon of a case. */
    nameSurgeon: z.boolean().default(false),
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
