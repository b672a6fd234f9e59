import { z } from 'zod';
import { configurationId, configurationVersionId, itemId, lineId } from '../identity/ids';
import { construct } from '../plans/plan';

/** 1 stops the step · 2 stops it unless a named substitute is there · 3 back-up · 4 convenience. */
export const mustHaveClass = z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)]);
export type MustHaveClass = z.infer<typeof mustHaveClass>;

/** One line of a configuration: an item, where it lies, and how many there should be. */
export const configurationLine = z.object({
  id: lineId,
  itemId,
  /** 1 is the top layer. */
  layer: z.number().int().min(1).max(12),
  row: z.number().int().min(1).max(60),
  slot: z.number().int().min(1).max(60),
  /** The rack it stands in, when it is a cell of a length grid. */
  rackItemId: itemId.nullable(),
  expected: z.number().int().min(1, 'at least 1').max(999),
  minimum: z.number().int().min(0).max(999),
  mustHaveClass,
  /** Approved one-way substitutes, by item; never followed further. */
  substitutes: z.array(itemId).max(10),
});
export type ConfigurationLine = z.infer<typeof configurationLine>;

export const layerInfo = z.object({
  layer: z.number().int().min(1).max(12),
  name: z.string().trim().min(1).max(60),
});

export const promisedConstruct = z.object({ name: z.string().trim().min(1).max(120), construct });

const body = {
  id: configurationVersionId,
  configurationId,
  version: z.number().int().positive(),
  layers: z.array(layerInfo).min(1),
  lines: z.array(configurationLine),
  promises: z.array(promisedConstruct).max(12),
  /** Basket and container, so that mass is of the whole. */
  basketItemId: itemId.nullable(),
  containerItemId: itemId.nullable(),
};

/** A draft may be incomplete; a version that is approved (for a day to come) or in force never changes. Different types. */
export const draftVersion = z.object({ ...body, status: z.literal('draft') });
export const frozenVersion = z.object({ ...body, status: z.enum(['approved', 'inForce', 'superseded']) });
export type DraftVersion = z.infer<typeof draftVersion>;
export type FrozenVersion = z.infer<typeof frozenVersion>;
export type ConfigurationVersion = DraftVersion | FrozenVersion;
