import { z } from 'zod';

export const loadState = z.enum([
  'makingUp',
  'running',
  'awaitingAcceptance',
  'accepted',
  'rejected',
  'undone',
]);
export type LoadState = z.infer<typeof loadState>;

export const indicatorKind = z.enum(['chemical', 'biological', 'airRemoval', 'printedRecord']);
export type IndicatorKind = z.infer<typeof indicatorKind>;

export const indicatorResult = z.enum(['pending', 'passed', 'failed']);
export type IndicatorResult = z.infer<typeof indicatorResult>;

/** How a pack was found when it was unloaded and looked at. Only `sound` packs may become sterile. */
export const unloadedAs = z.enum(['sound', 'wet', 'torn', 'unsealed']);
export type UnloadedAs = z.infer<typeof unloadedAs>;

export const packState = z.enum(['closed', 'inLoad', 'awaitingAcceptance', 'sterile', 'opened', 'undone']);
export type PackState = z.infer<typeof packState>;

/** Set out before the biological result: for which case, which packs, why, and who stood for it. */
export const implantException = z.object({
  caseId: z.string(),
  caseReference: z.string(),
  packIds: z.array(z.string()),
  reason: z.string(),
  lead: z.object({ id: z.string(), name: z.string() }),
  surgeon: z.object({ id: z.string(), name: z.string() }),
  at: z.string(),
});
export type ImplantException = z.infer<typeof implantException>;

/**
 * The number a load's paper carries: `L`, the figures in the steriliser's name, a hyphen and a number that grows over the
 * whole house, e.g. `L1-00451`.
 */
export function loadNumberOf(steriliserName: string, sequence: number): string {
  const mark = steriliserName.replaceAll(/\D/g, '').slice(0, 3);
  return `L${mark}-${String(sequence).padStart(5, '0')}`;
}

/** The growing part of a load's number; `null` where it is not written in our way. */
export function loadSequence(number: string): number | null {
  const found = /^L\d{0,3}-(\d{5,9})$/.exec(number);
  return found?.[1] === undefined ? null : Number(found[1]);
}
