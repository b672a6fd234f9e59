import { accountOfUse, freePacks } from '@/lib/usage/account';
import type { LostStep, UseOutcome } from '@/lib/usage/act';
import { stateOfUse } from '@/lib/usage/state';
import type { Queries } from '../../client';
import { entriesOfUse } from './tableFacts';
import { packsAtTable } from './tablePacks';

export interface PackAtTable {
  /** Packs of which a return may still speak: nothing is said of them, or they were handed back and are to be judged. */
  left: number;
  /** Handed back unopened, and their barrier not judged yet; part of `left`. */
  toJudge: number;
  /** What the record of use says of others. */
  said: { outcome: UseOutcome; lostAt: LostStep | null; quantity: number }[];
}

/** Single packs of a case as the record of use and the return have them together, by pick: one truth on both screens. */
export async function packsLeft(read: Queries, caseId: string): Promise<Map<string, PackAtTable>> {
  const [packs, entries] = await Promise.all([packsAtTable(read, caseId), entriesOfUse(read, caseId)]);
  const state = stateOfUse(entries);
  const accounts = accountOfUse(packs, state);
  return new Map(
    packs.map(({ pickId }, at) => {
      const account = accounts[at];
      const toJudge = account?.toJudge ?? 0;
      const free = account ? Math.max(0, freePacks(account)) : 0;
      const said = state.pieces.flatMap(({ source, outcome, lostAt, quantity }) =>
        source.kind === 'pack' && source.pickId === pickId ? [{ outcome, lostAt, quantity }] : [],
      );
      return [pickId, { left: free + toJudge, toJudge, said }];
    }),
  );
}
