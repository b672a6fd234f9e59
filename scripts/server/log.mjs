import { closeSync, existsSync, mkdirSync, openSync, renameSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import pino from 'pino';
import { PlainProblem } from '../bootstrap/plain-problem.mjs';

/** A file that grew so large is put aside, and so many of those are kept. */
const LARGE_BYTES = 50_000_000;
const KEPT_FILES = 5;
const LOOK_MS = 60_000;

/**
 * Where the log goes: standard output for `-`, else a file, which is `log/kitwright.log` beside the database unless told.
 * @param {Record<string, string | undefined>} env
 * @param {string} database
 */
export function logPlace(env, database) {
  return env.KITWRIGHT_LOG?.trim() || join(dirname(database), 'log', 'kitwright.log');
}

/**
 * What is logged: `info` unless told. A word that is none of these is refused as the database is prepared, in words and
 * with all else that is wrong; the log is there before.
 * @param {Record<string, string | undefined>} env
 */
export function logLevel(env) {
  const level = env.KITWRIGHT_LOG_LEVEL?.trim() ?? '';
  return ['debug', 'info', 'warn', 'error', 'silent'].includes(level) ? level : 'info';
}

/**
 * The log: one JSON object a line. What is written is named field by field; no body, no header, no query and no address with
 * a secret in it ever gets here.
 * @param {{ place: string, level?: string, of: 'server' | 'start' }} how `of`: which process writes
 */
export function openLog({ place, level = 'info', of }) {
  const isFile = place !== '-';
  if (isFile) requireFile(place);
  // at once and in order: what was logged before a kill is there
  const to = pino.destination({ dest: isFile ? place : 1, sync: true, mkdir: true });
  // a log that cannot be written, as on a full disk, must not stop the work
  to.on('error', () => {});
  const log = pino(
    {
      level,
      base: { of },
      timestamp: pino.stdTimeFunctions.isoTime,
      formatters: { level: (label) => ({ level: label }) },
      serializers: { err: errorFields },
    },
    to,
  );
  // one process alone puts the file aside; the other finds the new one when it looks
  const timer = isFile ? setInterval(() => putAside(place, to, of === 'server'), LOOK_MS) : undefined;
  timer?.unref();
  return log;
}

/** @type {Record<string, string>} */
const NO_PLACE = {
  EISDIR: 'it is a folder',
  EEXIST: 'a file is where its folder should be',
  ENOTDIR: 'a file is where its folder should be',
  EACCES: 'writing there is not permitted',
  EROFS: 'nothing can be written there',
  ENOSPC: 'there is no space left',
};

/**
 * Sees that a log can be there, and says in words where it cannot.
 * @param {string} place
 */
function requireFile(place) {
  try {
    mkdirSync(dirname(place), { recursive: true });
    closeSync(openSync(place, 'a'));
  } catch (error) {
    const { code } = /** @type {NodeJS.ErrnoException} */ (error);
    const why = NO_PLACE[code ?? ''] ?? code ?? String(error);
    throw new PlainProblem(
      `The log cannot be written to ${place} (${why}): name a file in a folder that may be written in KITWRIGHT_LOG, or - for standard output.`,
    );
  }
}

/**
 * What a fault says without what it quotes: engines and frameworks quote what was sent to them.
 * @param {string} text
 */
export function withoutQuotes(text) {
  return text.replaceAll(/"[^"]*"|“[^”]*”|`[^`]*`|(?<![\p{L}\p{N}])'[^']*'/gu, '“…”');
}

/** Of an error its kind, words without what they quote, code and where it happened; whatever else hangs on it may be what somebody sent. @param {any} error */
export function errorFields(error) {
  if (!(error instanceof Error)) return { type: typeof error };
  const { name, message, stack = '' } = error;
  const { code, digest } = /** @type {{ code?: unknown, digest?: unknown }} */ (error);
  return {
    type: name,
    message: withoutQuotes(message),
    stack: stack
      .split('\n')
      .filter((line) => /^\s+at /.test(line))
      .join('\n'),
    ...(typeof code === 'string' ? { code } : {}),
    ...(typeof digest === 'string' ? { digest } : {}),
  };
}

/** @param {string} place @param {{ reopen(): void }} to @param {boolean} isMine */
function putAside(place, to, isMine) {
  try {
    if (isMine && existsSync(place) && statSync(place).size > LARGE_BYTES) {
      for (let at = KEPT_FILES - 1; at >= 1; at -= 1)
        if (existsSync(`${place}.${at}`)) renameSync(`${place}.${at}`, `${place}.${at + 1}`);
      renameSync(place, `${place}.1`);
    }
    if (isMine ? !existsSync(place) : true) to.reopen();
  } catch {
    // it goes on into the file it has
  }
}
