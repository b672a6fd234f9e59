import { z } from 'zod';
import { ITEM_KINDS } from './item';
import { material, side } from './measures';

/** What a catalogue list is narrowed by; every part is optional, and what makes no sense is left out. */
export const catalogueSearch = z.object({
  /** Longer than anything in the catalogue is cut: left out, it would find everything. */
  q: z
    .string()
    .transform((typed) => typed.slice(0, 200))
    .default('')
    .catch(''),
  kind: z
    .enum(ITEM_KINDS as [string, ...string[]])
    .nullable()
    .default(null)
    .catch(null),
  maker: z.string().max(70).nullable().default(null).catch(null),
  material: material.nullable().default(null).catch(null),
  side: side.nullable().default(null).catch(null),
  /** Thread of screws and taps, diameter of bits and wires, bore of sleeves; whole micrometres. */
  diameterUm: z.coerce.number().int().positive().nullable().default(null).catch(null),
  status: z.enum(['current', 'withdrawn', 'recalled']).nullable().default(null).catch(null),
  sterile: z.enum(['yes', 'no', 'unknown']).nullable().default(null).catch(null),
  /** Only items with values that nobody has stated. */
  missing: z.literal('yes').nullable().default(null).catch(null),
});
export type CatalogueSearch = z.infer<typeof catalogueSearch>;

/** Names of the address's parameters, in the order of the form. */
export const SEARCH_NAMES = [
  'q',
  'kind',
  'maker',
  'material',
  'side',
  'diameterUm',
  'status',
  'sterile',
  'missing',
] as const;

/** A search from an address, whatever it holds. */
export function searchFrom(params: Pick<URLSearchParams, 'get'>): CatalogueSearch {
  return catalogueSearch.parse(
    Object.fromEntries(SEARCH_NAMES.flatMap((name) => (params.get(name) ? [[name, params.get(name)]] : []))),
  );
}

const MOST_WORDS = 12;

/**
 * What was typed as a full-text query: every word quoted, with a star, all of them wanted. A comma between digits is a
 * decimal point, and a unit stuck to a number is left out, as people write sizes. `null` when no word is left; then
 * nothing is narrowed if nothing was typed, and nothing matches otherwise.
 */
export function matchExpression(typed: string): string | null {
  const words = typed
    .normalize('NFC')
    .replaceAll('\u0000', ' ')
    .replace(/(\d),(\d)/g, '$1.$2')
    .split(/\s+/)
    .map((word) => word.replace(/^[øØ⌀]/, '').replace(/^(\d+(?:\.\d+)?)mm$/i, '$1'))
    .filter((word) => /[\p{L}\p{N}]/u.test(word))
    .slice(0, MOST_WORDS);
  if (words.length === 0) return null;
  return words.map((word) => `"${word.replaceAll('"', '""')}"*`).join(' ');
}
