import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that holds package.json, wherever the command was given. */
export const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** Everything that is written while running and never committed. */
export const VAR = resolve(ROOT, 'var');

export const NEXT_BIN = resolve(ROOT, 'node_modules/next/dist/bin/next');

/** The program of the server's own process. */
export const SERVER = resolve(ROOT, 'scripts/server/main.mjs');

/**
 * Where the database is: KITWRIGHT_DB, relative to the project's folder, or var/kitwright.sqlite.
 * @param {NodeJS.ProcessEnv} env
 */
export function databasePath(env) {
  return resolve(ROOT, env.KITWRIGHT_DB || 'var/kitwright.sqlite');
}
