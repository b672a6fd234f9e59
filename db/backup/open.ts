import { copyFileSync, existsSync, rmSync } from 'node:fs';
import { basename } from 'node:path';
import type { BackupManifest, BackupProof } from '@/lib/backups/manifest';
import { backupWords as words } from '@/lib/wording/backups';
import { sha256OfFile } from './make';
import { proveCopy } from './prove';
import { isMisdescribed, readManifest } from './read';
import { openSealed } from './seal';

interface OpenBackup {
  path: string;
  /** File with the key of a sealed backup. */
  keyFile: string | null;
  /** Where to put it, open. */
  to: string;
  now: string;
}

export interface Opened {
  manifest: BackupManifest | null;
  proof: BackupProof;
}

/** Why a backup could not be opened; in words for people. */
export class CannotOpen extends Error {}

/**
 * Puts a backup, open, into a file of its own and proves it there, as if it had to be used: the same whether it is a drill
 * or put back. What is found wrong is in the proof; the file is there all the same, so that it can be looked at.
 *
 * Throws `CannotOpen` where there is none or it is sealed and no key is named, `WrongKey` where the key does not fit.
 */
export async function openBackup({ path, keyFile, to, now }: OpenBackup): Promise<Opened> {
  if (!existsSync(path)) throw new CannotOpen(words.noBackup(path));
  const manifest = readManifest(path);
  const isSealed = manifest?.isSealed ?? path.endsWith('.age');
  if (isSealed && keyFile === null) throw new CannotOpen(words.sealed(path));
  const faults: string[] = [];
  if (isMisdescribed(path)) faults.push(words.wrongDescription(`${basename(path)}.json`));
  if (manifest && (await sha256OfFile(path)) !== manifest.sha256)
    faults.push(words.wrongHash(basename(path)));
  rmSync(to, { force: true });
  if (isSealed && keyFile !== null) await openSealed(path, to, keyFile);
  else copyFileSync(path, to);
  const proof = proofOf(to, now);
  return { manifest, proof: { ...proof, faults: [...faults, ...proof.faults] } };
}

function proofOf(path: string, now: string): BackupProof {
  try {
    // a backup must open where the second place went down with the rest
    return proveCopy({ path, now, headsText: null, areHeadsLookedFor: false });
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    return { provedAt: now, faults: [words.unreadable(said)], ledgerEntries: 0, head: null, schema: '' };
  }
}
