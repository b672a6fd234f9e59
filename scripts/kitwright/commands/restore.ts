import { userInfo } from 'node:os';
import { resolve } from 'node:path';
import { putBack } from '@/db/backup/putBack';
import { backupWords as words } from '@/lib/wording/backups';
import { takeLock } from '../../bootstrap/lock.mjs';
import { CannotDo, type Command } from '../command';
import { placesOf, shown } from '../places';

/** Puts a backup in place of the database, with the server stopped. */
export const restore: Command = {
  usage: 'FILE [--key FILE] --yes',
  does: 'puts a backup in place of the database, with the server stopped; what was there is kept',
  words: [1, 1],
  options: { key: { type: 'string' }, yes: { type: 'boolean' } },
  async run({ words: [file = ''], options, env, now }) {
    const { database, heads } = placesOf(env);
    if (options.yes !== true) throw new CannotDo(words.sayYes(shown(database), file));
    // no server can start meanwhile
    const giveBack = await takeLock(`${database}.prepare.lock`, { waitMs: 10_000 });
    try {
      const outcome = await putBack({
        backup: resolve(file),
        keyFile: options.key === undefined ? null : String(options.key),
        database,
        headsPlace: heads,
        now: now().toISOString(),
        by: userInfo().username,
      });
      return {
        exit: 0,
        lines: [
          words.putBack(shown(database), outcome.aside && shown(outcome.aside)),
          words.proven(outcome.proof.ledgerEntries),
          words.lost(outcome.lost),
        ],
        json: outcome,
      };
    } finally {
      giveBack();
    }
  },
};
