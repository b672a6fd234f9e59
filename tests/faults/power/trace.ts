import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';
import type { DiskEvent } from './disk';

/** The calls by which a program changes files, as strace names them. */
export const CALLS = [
  'openat',
  'open',
  'creat',
  'pwrite64',
  'write',
  'pwritev',
  'writev',
  'ftruncate',
  'truncate',
  'fallocate',
  'sync_file_range',
  'fsync',
  'fdatasync',
  'unlink',
  'unlinkat',
  'rename',
  'renameat',
  'renameat2',
  'link',
  'linkat',
];

/** `strace -y -xx` writes every text, and the path of every descriptor, byte for byte as `\x2f`. */
const bytesOf = (text: string): Buffer => Buffer.from(text.replaceAll('\\x', ''), 'hex');
const textOf = (text: string): string => bytesOf(text).toString('utf8');

/**
 * The events of one thread's calls below `folder`, from the lines of `strace -y -xx`. A call that failed changed nothing. A
 * kind of call that is not understood here is an error when it concerns the folder, never passed over.
 *
 * `there`: files that were there before. `skip`: those that do not outlive the power, such as the engine's shared memory.
 */
export async function* readTrace(
  path: string,
  { folder, there: before, skip }: { folder: string; there: Iterable<string>; skip(path: string): boolean },
): AsyncGenerator<DiskEvent> {
  const isOurs = (one: string) => (one === folder || one.startsWith(`${folder}/`)) && !skip(one);
  const there = new Set(before);
  for await (const line of createInterface({ input: createReadStream(path) })) {
    const event = eventOf(line, isOurs, there);
    if (event) yield event;
  }
}

function eventOf(line: string, isOurs: (path: string) => boolean, there: Set<string>): DiskEvent | null {
  const call = /^(\w+)\(/.exec(line)?.[1];
  if (!call || !CALLS.includes(call) || / = -1 E/.test(line)) return null;
  const of = /^\w+\(\d+<([^>]*)>/.exec(line)?.[1];
  const path = of === undefined ? null : textOf(of);
  if (call === 'write' && /^write\(1</.test(line))
    return { kind: 'told', text: textOf(/, "([^"]*)"/.exec(line)?.[1] ?? '') };
  switch (call) {
    case 'openat':
    case 'open': {
      const opened = textOf(/ = \d+<([^>]*)>$/.exec(line)?.[1] ?? '');
      if (!isOurs(opened) || !line.includes('O_CREAT')) return null;
      const isNew = !there.has(opened);
      there.add(opened);
      return isNew ? { kind: 'create', path: opened } : null;
    }
    case 'pwrite64': {
      if (path === null || !isOurs(path)) return null;
      const [, text = '', at = ''] = /, "([^"]*)"(?:\.\.\.)?, \d+, (\d+)\) = \d+$/.exec(line) ?? [];
      const bytes = bytesOf(text);
      if (Number(/ = (\d+)$/.exec(line)?.[1]) !== bytes.length)
        throw new Error(`not all bytes were recorded: ${line.slice(-60)}`);
      return { kind: 'write', path, at: Number(at), bytes };
    }
    case 'ftruncate':
      if (path === null || !isOurs(path)) return null;
      return { kind: 'length', path, length: Number(/, (\d+)\) = 0$/.exec(line)?.[1]) };
    case 'fsync':
    case 'fdatasync':
      return path !== null && isOurs(path) ? { kind: 'sync', path } : null;
    case 'unlink': {
      const gone = textOf(/^unlink\("([^"]*)"/.exec(line)?.[1] ?? '');
      if (!isOurs(gone)) return null;
      there.delete(gone);
      return { kind: 'remove', path: gone };
    }
    case 'rename': {
      const [, from = '', to = ''] = /^rename\("([^"]*)", "([^"]*)"/.exec(line) ?? [];
      if (!isOurs(textOf(from)) && !isOurs(textOf(to))) return null;
      there.add(textOf(to));
      return { kind: 'rename', path: textOf(from), to: textOf(to) };
    }
    default:
      if (path !== null && isOurs(path)) throw new Error(`${call} is not understood: ${line.slice(0, 120)}`);
      return null;
  }
}
