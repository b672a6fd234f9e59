import ucum from '@lhncbc/ucum-lhc';

const units = ucum.UcumLhcUtils.getInstance();

/** Whether a code is one of UCUM, asked of the National Library of Medicine’s own reader of it. */
export const isUcum = (code: string): boolean => units.validateUnitString(code).status === 'valid';

/** Quantities of a resource, wherever they are. */
export function quantitiesIn(value: unknown): { system?: string; code?: string; value?: number }[] {
  if (Array.isArray(value)) return value.flatMap(quantitiesIn);
  if (typeof value !== 'object' || value === null) return [];
  const own = 'unit' in value && 'code' in value ? [value as { system?: string; code?: string }] : [];
  return [...own, ...Object.values(value).flatMap(quantitiesIn)];
}
