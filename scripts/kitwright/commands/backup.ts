import { join } from 'node:path';
import { makeBackup } from '@/db/backup/make';
import { removeOldNights } from '@/db/backup/remove';
import { isRecipient } from '@/db/backup/seal';
import { backupReason, isProven } from '@/lib/backups/manifest';
import { backupSettings } from '@/lib/running/configuration';
import { backupWords as words } from '@/lib/wording/backups';
import { CannotDo, type Command } from '../command';
import { placesOf, shown, textOf } from '../places';

/** Makes a backup and proves it; by night, deletes those of old nights. */
export const backup: Command = {
  usage: '[--to FOLDER] [--seal-for age1…] [--reason asked|nightly]',
  does: 'makes a backup while the server runs, and proves it by opening it and reading all of it',
  words: [0, 0],
  options: {
    to: { type: 'string' },
    'seal-for': { type: 'string' },
    reason: { type: 'string' },
  },
  async run({ options, env, now }) {
    const { database, heads, backups } = placesOf(env);
    const settings = backupSettings(env);
    const recipient = options['seal-for'] === undefined ? settings.recipient : String(options['seal-for']);
    if (recipient !== null && !isRecipient(recipient)) throw new CannotDo(words.noRecipient);
    const reason = backupReason.safeParse(options.reason ?? 'asked');
    if (!reason.success) throw new CannotDo(words.noReason);
    const folder = options.to === undefined ? backups : String(options.to);
    const manifest = await makeBackup({
      database,
      folder,
      reason: reason.data,
      now: now().toISOString(),
      headsText: textOf(heads),
      recipient,
    });
    const isGood = isProven(manifest);
    const removed = reason.data === 'nightly' && isGood ? removeOldNights(folder, settings) : [];
    return {
      exit: isGood ? 0 : 1,
      lines: [
        words.made(shown(join(folder, manifest.file)), manifest.bytes),
        ...(isGood
          ? [words.proven(manifest.proof.ledgerEntries)]
          : [...manifest.proof.faults, words.notProven]),
        ...(removed.length === 0 ? [] : [words.removed(removed.length)]),
      ],
      json: { ...manifest, folder, removed: removed.map(({ file }) => file) },
    };
  },
};
