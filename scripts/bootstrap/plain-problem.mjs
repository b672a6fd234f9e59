/**
 * A failure that is told to the person at the keyboard in one sentence, without a stack trace.
 * `detail` holds what a technician would want to see before that sentence.
 */
export class PlainProblem extends Error {
  /**
   * @param {string} sentence
   * @param {{ detail?: string, cause?: unknown }} [more]
   */
  constructor(sentence, { detail, cause } = {}) {
    super(sentence, { cause });
    this.name = 'PlainProblem';
    this.detail = detail ?? '';
  }
}

const DISK_FULL = /\bENOSPC\b|\bEDQUOT\b|no space left on device|SQLITE_FULL|database or disk is full/i;
const READ_ONLY =
  /\bEROFS\b|\bEACCES\b|\bEPERM\b|read-only file system|permission denied|SQLITE_READONLY|SQLITE_CANTOPEN|attempt to write a readonly database|unable to open database file/i;
const NO_REGISTRY =
  /\bENOTFOUND\b|\bEAI_AGAIN\b|\bECONNREFUSED\b|\bECONNRESET\b|\bETIMEDOUT\b|\bENETUNREACH\b|\bEHOSTUNREACH\b|\bERR_SOCKET_TIMEOUT\b|network request to .* failed|Temporary failure resolving|Could not resolve/i;
const PORT_TAKEN = /\bEADDRINUSE\b/;
const PORT_FORBIDDEN = /listen EACCES/;
const LOCKFILE_DIFFERS = /can only install packages when your package\.json and package-lock\.json/i;
const NO_COMPILER = /gyp ERR!|node-gyp|not found: make|g\+\+: not found/i;
const NOT_A_DATABASE = /SQLITE_NOTADB|file is not a database/i;
const DAMAGED_DATABASE = /SQLITE_CORRUPT|database disk image is malformed/i;
const NEWER_DATABASE = /Error: the database is newer than this program/;
const OTHER_MIGRATION = /Error: the migration (\S+) was changed after it was applied/;
const BUSY_DATABASE = /SQLITE_BUSY|SQLITE_LOCKED|database is locked/i;
const OUT_OF_MEMORY = /heap out of memory|\bENOMEM\b/i;

/**
 * The one sentence for a failure whose text is known, or null when the text says nothing we recognise.
 * The order matters: a full disk also breaks the network, the compiler and the database.
 * @param {string} text what the failing program printed, or an error's code and message
 * @param {{ folder?: string, port?: number, database?: string, doing?: 'installing' | 'building' | 'database' | 'serving' | 'browser' }} where
 * @returns {string | null}
 */
export function plainSentence(text, { folder = 'this folder', port, database, doing } = {}) {
  if (DISK_FULL.test(text)) {
    return `The disk that holds ${folder} is full: free some space and start again.`;
  }
  if (PORT_TAKEN.test(text)) return portTaken(port ?? 3000);
  if (PORT_FORBIDDEN.test(text)) {
    return `This user may not open port ${port}: start with another one, for example PORT=3000 npm start.`;
  }
  if (doing === 'database') {
    if (NOT_A_DATABASE.test(text)) {
      return `${database} is not a database: set KITWRIGHT_DB to another file, or move that one away, and start again.`;
    }
    if (DAMAGED_DATABASE.test(text)) {
      return `The database ${database} is damaged: restore it from its latest backup and start again.`;
    }
    if (NEWER_DATABASE.test(text)) {
      return `The database ${database} was made by a newer Kitwright: update this folder, or set KITWRIGHT_DB to another file, and start again.`;
    }
    const migration = OTHER_MIGRATION.exec(text)?.[1];
    if (migration) {
      return `The database ${database} was made with another text of ${migration} than this folder has: use the Kitwright that made it, or set KITWRIGHT_DB to another file, and start again.`;
    }
    if (BUSY_DATABASE.test(text)) {
      return `Another program is writing to the database ${database}: stop it, or wait until it is done, and start again.`;
    }
  }
  if (OUT_OF_MEMORY.test(text)) {
    return 'This machine ran out of memory: close other programs, or use a machine with at least 2 GB free, and start again.';
  }
  if (doing === 'installing' && LOCKFILE_DIFFERS.test(text)) {
    return 'package.json and package-lock.json disagree: run "npm install" once and start again.';
  }
  if ((doing === 'installing' || doing === 'browser') && NO_REGISTRY.test(text)) {
    return doing === 'installing'
      ? 'The npm registry cannot be reached, so the packages cannot be installed: connect this machine to the network and start again.'
      : "Debian's packages cannot be reached, so the browser for the tests cannot be installed: connect this machine to the network and try again.";
  }
  if (READ_ONLY.test(text)) {
    const what = doing === 'database' ? `the database ${database} and its folder` : folder;
    return `This user cannot write to ${what}: give it write permission, or use a folder that has it, and start again.`;
  }
  if (doing === 'installing' && NO_COMPILER.test(text)) {
    return 'better-sqlite3 could not be compiled: install Python 3, make and a C++ compiler and start again.';
  }
  return null;
}

/** @param {number} port */
export function portTaken(port) {
  return `Port ${port} is taken by another program: stop that program, or start on another port, for example PORT=${port === 65535 ? 3000 : port + 1} npm start.`;
}

/**
 * Any error as a PlainProblem: a known one gets its sentence, an unknown one keeps its stack as detail.
 * @param {unknown} error
 * @param {Parameters<typeof plainSentence>[1]} where
 */
export function asPlainProblem(error, where) {
  if (error instanceof PlainProblem) return error;
  const text =
    error instanceof Error ? `${'code' in error ? error.code : ''} ${error.message}` : String(error);
  const sentence = plainSentence(text, where);
  if (sentence) return new PlainProblem(sentence, { cause: error });
  const detail = error instanceof Error ? error.stack : String(error);
  return new PlainProblem('Kitwright met an error of its own, shown above.', { detail, cause: error });
}

/**
 * Tells a problem on standard error, the sentence last, where the eye is.
 * @param {PlainProblem} problem
 */
export function tell(problem) {
  if (problem.detail) console.error(`${problem.detail.trimEnd()}\n`);
  console.error(problem.message);
}
