import { existsSync } from 'node:fs';
import { dirname } from 'node:path';
import { shown } from './places';

/** What stood in the way at a file that a command was to read or write, by its name; `null` where it is something else. */
export function fileProblem(error: unknown): string | null {
  if (!(error instanceof Error) || !('code' in error) || !('path' in error)) return null;
  if (typeof error.path !== 'string') return null;
  const path = shown(error.path.replace(/\.unfinished$/, ''));
  switch (error.code) {
    case 'ENOENT':
      return existsSync(dirname(error.path))
        ? `There is no file ${path}.`
        : `There is no folder ${shown(dirname(error.path))}: make it first, or name another.`;
    case 'ENOTDIR':
      return `${path} can’t be: what should be its folder is a file. Name another.`;
    case 'EEXIST':
      return `${path} is there already, and is no folder: name another.`;
    case 'EISDIR':
      return `${path} is a folder: name a file.`;
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return `This user may not use ${path}: give them the right to, or name another file.`;
    case 'ENOSPC':
    case 'EDQUOT':
      return `The disk that holds ${path} is full: free some space, or name a file on another disk.`;
    default:
      return null;
  }
}
