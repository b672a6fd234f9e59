import { z } from 'zod';
import { caseId, itemId, lineId } from '../identity/ids';
import { mustHaveClass } from '../sets/configuration';
import { standIn } from '../sets/short/standIns';

export const barrier = z.enum(['wrap', 'container', 'pouch']);
export type Barrier = z.infer<typeof barrier>;

export const packState = z.enum(['closed', 'inLoad', 'awaitingAcceptance', 'sterile', 'opened', 'undone']);
export type PackState = z.infer<typeof packState>;

/** What lay in a set when it was closed, line by line. */
export const packedLine = z.object({
  lineId,
  itemId,
  mustHaveClass,
  expected: z.number().int().positive(),
  found: z.number().int().min(0),
});
export const packContents = z.array(packedLine);
export type PackedLine = z.infer<typeof packedLine>;

const stopped = z.object({
  stopped: z.array(
    z.object({
      purpose: z.enum(['plate', 'neutral', 'offset', 'lag', 'locked', 'temporaryWire']),
      stopped: z.number().int(),
      of: z.number().int(),
    }),
  ),
  shortItems: z.array(itemId),
});

/** What the shortage stopped as the pack was closed: a booked case's plan, or a construct the configuration promises. */
export const packStop = z.discriminatedUnion('kind', [
  stopped.extend({ kind: z.literal('case'), caseId, reference: z.string(), startsAt: z.string() }),
  stopped.extend({ kind: z.literal('construct'), name: z.string() }),
]);
export type PackStop = z.infer<typeof packStop>;

/** What is short in a closed pack, what that stops, what travels with it, and for which case alone it goes. */
export const packShort = z.object({
  lines: z.array(
    z.object({
      lineId,
      itemId,
      mustHaveClass,
      short: z.number().int().positive(),
      belowMinimum: z.number().int().min(0),
    }),
  ),
  stops: z.array(packStop),
  substitutes: z.array(standIn),
  forCase: z.object({ id: caseId, reference: z.string() }).nullable(),
});
export type PackShort = z.infer<typeof packShort>;
