import { z } from 'zod';

/**
 * What became of something that was issued. A set came back, to be reprocessed, or came back unopened with a sound barrier;
 * single packs came back unopened, were opened (implanted or not is for the record of use), were damaged, or were not found.
 */
export const returnOutcome = z.enum(['cameBack', 'returnedUnopened', 'opened', 'damaged', 'notFound']);
export type ReturnOutcome = z.infer<typeof returnOutcome>;

export const SET_OUTCOMES: readonly ReturnOutcome[] = ['cameBack', 'returnedUnopened', 'notFound'];
export const PACK_OUTCOMES: readonly ReturnOutcome[] = ['returnedUnopened', 'opened', 'damaged', 'notFound'];

interface Issued {
  id: string;
  quantity: number;
  issued: boolean;
}
interface Returned {
  pickId: string;
  outcome: ReturnOutcome;
  quantity: number;
}

export interface Account {
  /** Pieces that left the store. */
  out: number;
  /** Pieces accounted for, by what became of them. */
  back: Record<ReturnOutcome, number>;
  stillOut: number;
}

/** Pieces out = pieces accounted for + pieces still out, over all picks or over one of them. */
export function accountOf(picks: readonly Issued[], returns: readonly Returned[]): Account {
  const issued = picks.filter((pick) => pick.issued);
  const ids = new Set(issued.map(({ id }) => id));
  const out = issued.reduce((sum, { quantity }) => sum + quantity, 0);
  const back = { cameBack: 0, returnedUnopened: 0, opened: 0, damaged: 0, notFound: 0 };
  for (const one of returns) if (ids.has(one.pickId)) back[one.outcome] += one.quantity;
  const accounted = Object.values(back).reduce((sum, pieces) => sum + pieces, 0);
  return { out, back, stillOut: out - accounted };
}
