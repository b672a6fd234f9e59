import { parseArgs } from 'node:util';
import { headsPath } from '@/db/ledgerHeadsFile';
import { databasePath } from '../bootstrap/places.mjs';

/** What the ledger's commands are told: which database, where its heads are, and heads from paper. */
export function readLedgerArguments(words: string[], env: NodeJS.ProcessEnv) {
  const { values } = parseArgs({
    args: words,
    options: {
      db: { type: 'string' },
      heads: { type: 'string' },
      head: { type: 'string', multiple: true },
      to: { type: 'string' },
    },
  });
  const database = databasePath(values.db ? { ...env, KITWRIGHT_DB: values.db } : env);
  return {
    database,
    heads: values.heads ?? headsPath(database, env.KITWRIGHT_HEADS),
    head: values.head ?? [],
    to: values.to ?? null,
  };
}
