import { run } from './command.mjs';
import { ROOT } from './places.mjs';

const DAY_MS = 86_400_000;
/** A machine that was off by night makes up for it after so long, when whoever started it has what they came for. */
const CATCH_UP_MS = 10 * 60_000;
/** The clock is looked at again, for it may have been set, or the machine have slept. */
const LOOK_MS = 60_000;

/**
 * The moment of the next night's backup, by the machine's own clock and time zone.
 * @param {string} at as in `02:30`
 * @param {Date} now
 */
export function nextNight(at, now) {
  const [hours = 0, minutes = 0] = at.split(':').map(Number);
  const next = new Date(now);
  next.setHours(hours, minutes, 0, 0);
  if (next <= now) next.setDate(next.getDate() + 1);
  return next;
}

/**
 * Makes a backup each night while the server runs, in a process of its own. What goes wrong is said and tried again the next
 * night; the health page and the doctor tell how old the newest proven backup is.
 * @param {{ at: string, database: string, isDemo: boolean, say: (line: string) => void, log?: (right: boolean, said: string) => void }} how `at`: a time, or `no`
 * @returns {() => void} ends it
 */
export function backUpByNight({ at, database, isDemo, say, log = () => {} }) {
  if (at === 'no' || isDemo) return () => {};
  let due = nextNight(at, new Date());
  let busy = false;
  const back = async () => {
    busy = true;
    const { code, output } = await run(
      process.execPath,
      ['scripts/kitwright.mjs', 'backup', '--reason', 'nightly'],
      { env: { KITWRIGHT_DB: database }, cwd: ROOT },
    );
    log(code === 0, output.trim());
    say(`Nightly backup: ${code === 0 ? '' : 'NOT as it should be. '}${output.trim().replaceAll('\n', ' ')}`);
    busy = false;
  };
  const look = () => {
    const now = new Date();
    // a clock set back by more than a day must not put the next night off
    if (due.getTime() - now.getTime() > DAY_MS + LOOK_MS) due = nextNight(at, now);
    if (now < due || busy) return;
    due = nextNight(at, now);
    void back();
  };
  const timer = setInterval(look, LOOK_MS);
  const catchUp = setTimeout(async () => {
    const { output } = await run(process.execPath, ['scripts/kitwright.mjs', 'backups', '--json'], {
      env: { KITWRIGHT_DB: database },
      cwd: ROOT,
    });
    if (!busy && isOverdue(output, new Date())) await back();
  }, CATCH_UP_MS);
  return () => {
    clearInterval(timer);
    clearTimeout(catchUp);
  };
}

/**
 * Whether the newest proven backup is older than a day, or there is none.
 * @param {string} listed what `kitwright backups --json` said
 * @param {Date} now
 */
export function isOverdue(listed, now) {
  try {
    const { backups } = JSON.parse(listed);
    const proven = backups.filter((/** @type {any} */ one) => one.proof.faults.length === 0);
    return !proven.some((/** @type {any} */ one) => now.getTime() - Date.parse(one.madeAt) < DAY_MS);
  } catch {
    return false;
  }
}
