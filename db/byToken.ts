import { AsyncLocalStorage } from 'node:async_hooks';
import type { Database } from './client';

/** The token by which a write was asked for, as the ledger has it. */
export interface TokenMark {
  id: string;
  name: string;
}

const present = new AsyncLocalStorage<TokenMark>();

/** The token of the work that is being written, or `null`: a person asked for it on a screen. */
export const tokenOfWork = (): TokenMark | null => present.getStore() ?? null;

/**
 * The same store, on which everything written says that it was asked for by this token. It is said around each work and not
 * around the request: works of several requests are written by one loop, begun by whichever came first.
 */
export function writtenByToken(db: Database, mark: TokenMark): Database {
  return { ...db, tx: (work) => db.tx((write) => present.run(mark, () => work(write))) };
}
