import { createReadStream, createWriteStream, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { Readable, Writable } from 'node:stream';
import { Decrypter, Encrypter, generateX25519Identity, identityToRecipient } from 'age-encryption';
import { backupWords as words } from '@/lib/wording/backups';

/**
 * Sealing by the open age file format (version 1), so that a hospital can open its backups without this program. The server
 * holds only the public half; the file with the other half belongs in a safe.
 */
export async function sealFile(from: string, to: string, recipient: string): Promise<void> {
  const encrypter = new Encrypter();
  encrypter.addRecipient(recipient);
  await pour(await encrypter.encrypt(streamOf(from)), to);
}

/** Opens a sealed file with the keys of `keyFile`. Throws `WrongKey` in words when none of them fits, or the file was changed. */
export async function openSealed(from: string, to: string, keyFile: string): Promise<void> {
  const decrypter = new Decrypter();
  for (const identity of identitiesIn(keyFile)) decrypter.addIdentity(identity);
  try {
    await pour(await decrypter.decrypt(streamOf(from)), to);
  } catch (error) {
    if (isOfDisk(error)) throw error;
    throw new WrongKey(words.wrongKey(from), { cause: error });
  }
}

export class WrongKey extends Error {}

/** Makes a new key in a file of its own, readable by its owner alone; answers the public half. */
export async function makeKeyFile(path: string, now: string): Promise<string> {
  if (existsSync(path)) throw new WrongKey(words.keyExists(path));
  const identity = await generateX25519Identity();
  const recipient = await identityToRecipient(identity);
  writeFileSync(path, `# made ${now}\n# public half: ${recipient}\n${identity}\n`, {
    mode: 0o600,
    flag: 'wx',
  });
  return recipient;
}

/** Whether a text is the public half of a key. */
export function isRecipient(text: string): boolean {
  try {
    new Encrypter().addRecipient(text);
    return true;
  } catch {
    return false;
  }
}

function identitiesIn(path: string): string[] {
  const lines = readFileSync(path, 'utf8')
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '' && !line.startsWith('#'));
  if (lines.length === 0) throw new WrongKey(words.noKeyIn(path));
  return lines;
}

// Node's web streams are those of the platform; only their type declarations differ
const streamOf = (path: string) =>
  Readable.toWeb(createReadStream(path)) as unknown as ReadableStream<Uint8Array>;

const pour = (from: ReadableStream<Uint8Array>, to: string) =>
  from.pipeTo(
    Writable.toWeb(createWriteStream(to, { mode: 0o600 })) as unknown as WritableStream<Uint8Array>,
  );

const isOfDisk = (error: unknown) =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' && error.code.startsWith('E');
