import { backupsIn } from '@/db/backup/read';
import { isProven } from '@/lib/backups/manifest';
import { backupWords as words } from '@/lib/wording/backups';
import type { Command } from '../command';
import { placesOf, shown } from '../places';

/** Lists the backups there are. */
export const backups: Command = {
  usage: '[--in FOLDER]',
  does: 'lists the backups, when and why each was made, and whether it is proven',
  words: [0, 0],
  options: { in: { type: 'string' } },
  async run({ options, env }) {
    const folder = options.in === undefined ? placesOf(env).backups : String(options.in);
    const found = backupsIn(folder);
    return {
      exit: 0,
      lines:
        found.length === 0
          ? [words.none(shown(folder))]
          : found.map((one) =>
              [
                one.madeAt.slice(0, 16).replace('T', ' '),
                one.file,
                words.reason[one.reason],
                one.isSealed ? 'sealed' : 'not sealed',
                isProven(one) ? 'proven' : 'NOT PROVEN',
              ].join('  '),
            ),
      json: { folder, backups: found },
    };
  },
};
