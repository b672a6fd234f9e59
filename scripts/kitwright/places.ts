import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { headsPath } from '@/db/ledgerHeadsFile';
import { configurationProblems } from '@/lib/running/configuration';
import { databasePath } from '../bootstrap/places.mjs';
import { CannotDo } from './command';

/** Where a command finds what it works on. Throws `CannotDo` with all that is wrong in the environment. */
export function placesOf(env: NodeJS.ProcessEnv) {
  const problems = configurationProblems(env).filter(({ code }) => code !== 'unknown');
  if (problems.length > 0) throw new CannotDo(problems.map(({ message }) => message).join('\n'));
  const database = databasePath(env);
  return {
    database,
    heads: headsPath(database, env.KITWRIGHT_HEADS),
    backups: resolve(env.KITWRIGHT_BACKUPS?.trim() || join(dirname(database), 'backups')),
  };
}

/** The text of the second place of the ledger's heads, empty where there is none. */
export const textOf = (path: string): string => (existsSync(path) ? readFileSync(path, 'utf8') : '');

/** A path as a person would type it here. */
export function shown(path: string): string {
  const inside = relative(process.cwd(), path);
  return inside.startsWith('..') ? path : inside;
}
