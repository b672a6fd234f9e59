import { makeKeyFile } from '@/db/backup/seal';
import { backupWords as words } from '@/lib/wording/backups';
import { CannotDo, type Command } from '../command';

/** Makes a key for sealing backups. */
export const key: Command = {
  usage: 'new FILE',
  does: 'makes a key for sealing backups; its file belongs in a safe, its public half in KITWRIGHT_BACKUP_KEY',
  words: [2, 2],
  async run({ words: [act, file = ''], now }) {
    if (act !== 'new') throw new CannotDo('Usage: kitwright key new FILE');
    const recipient = await makeKeyFile(file, now().toISOString());
    return { exit: 0, lines: words.keyMade(file, recipient), json: { file, recipient } };
  },
};
