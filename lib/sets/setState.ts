import { z } from 'zod';

/** Where a set is in its turn. Plain words, ours; `held` always has a because. */
export const turnStep = z.enum([
  'inTheatre',
  'comingBack',
  'washing',
  'onBench',
  'shortAwaitingDecision',
  'packed',
  'inSteriliser',
  'awaitingAcceptance',
  'inSterileStore',
  'held',
]);
export type TurnStep = z.infer<typeof turnStep>;

export const heldBecause = z.enum([
  'dirtyAfterWash',
  'wrapWetTornOrUnsealed',
  'indicatorOrCycleFailed',
  'loadUnknown',
  'recall',
  'wrongLabel',
  'disputedCount',
  'loanWithoutDeclaration',
  'mustHaveDamaged',
]);
export type HeldBecause = z.infer<typeof heldBecause>;

/** The state a piece was found in. Only `sound` pieces count as found. */
export const pieceCondition = z.enum([
  'sound',
  'bent',
  'blunt',
  'corroded',
  'stained',
  'markingGone',
  'boreWorn',
]);
export type PieceCondition = z.infer<typeof pieceCondition>;
