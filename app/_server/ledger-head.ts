import 'server-only';
import { newestEntry } from '@/db/queries/ledgerHead';
import { database, watchOfLedger } from './database';

/** The ledger's newest entry, for the foot of a sheet; whoever prints may see it, though not the ledger. */
export const headForPaper = () => newestEntry(database());

/** How the ledger and the second place of its heads stand, for its own page. */
export const ledgerWatchNow = () => watchOfLedger();
