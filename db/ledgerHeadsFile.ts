import { closeSync, existsSync, fstatSync, fsyncSync, openSync, readSync, writeSync } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { type HeadLine, headText } from '@/lib/ledger/heads';

/**
 * Where the heads of a database's ledger are written: what `KITWRIGHT_HEADS` says, which should be another disk or machine,
 * or else beside the database. One file belongs to one ledger.
 */
export function headsPath(database: string, told: string | undefined): string {
  return told ? resolve(told) : `${resolve(database)}-heads.jsonl`;
}

const LINE_FEED = 0x0a;

/** Appends one head; resolved when the disk has it. Nobody waits for it: a slow second place holds up no write. */
export async function writeHead(path: string, head: HeadLine): Promise<void> {
  const isNew = !existsSync(path);
  const file = await open(path, 'a+', 0o644);
  try {
    const { size } = await file.stat();
    const end = size === 0 ? LINE_FEED : await byteAt(file, size - 1);
    // a line that a crash cut short is ended first
    await file.appendFile((end === LINE_FEED ? '' : '\n') + headText(head));
    await file.sync();
  } finally {
    await file.close();
  }
  if (!isNew) return;
  // a new file is on the disk only when its folder is
  const folder = await open(dirname(resolve(path)), 'r');
  await folder.sync().finally(() => folder.close());
}

/** The same while the process ends, when nothing can be waited for. */
export function writeHeadNow(path: string, head: HeadLine): void {
  const file = openSync(path, 'a+', 0o644);
  try {
    const { size } = fstatSync(file);
    const end = Buffer.from([LINE_FEED]);
    if (size > 0) readSync(file, end, 0, 1, size - 1);
    writeSync(file, (end[0] === LINE_FEED ? '' : '\n') + headText(head));
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

async function byteAt(file: FileHandle, position: number): Promise<number | undefined> {
  const { buffer } = await file.read(Buffer.alloc(1), 0, 1, position);
  return buffer[0];
}
