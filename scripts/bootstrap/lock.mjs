import {
  closeSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { PlainProblem } from './plain-problem.mjs';

/** A holder writes its name right after making the file; a nameless file older than this was left by a crash. */
const NAMELESS_FOR_MS = 10_000;

/**
 * @typedef {{ pid: number, began: string | null }} Holder a process and, where the system tells it, when it began
 */

/**
 * Whether a lock file was left behind by a process that no longer runs.
 * A process number alone is not enough: numbers are given again after a restart.
 * @param {Holder | null} holder what the file says; null when it says nothing readable
 * @param {number} ageMs how long ago the file was written
 * @param {(pid: number) => { alive: boolean, began: string | null }} look
 */
export function isStale(holder, ageMs, look) {
  if (!holder) return ageMs > NAMELESS_FOR_MS;
  const now = look(holder.pid);
  if (!now.alive) return true;
  return holder.began !== null && now.began !== null && holder.began !== now.began;
}

/**
 * @param {number} pid
 * @returns {{ alive: boolean, began: string | null }}
 */
function lookAtProcess(pid) {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if (/** @type {any} */ (error).code !== 'EPERM') return { alive: false, began: null };
  }
  return { alive: true, began: beganAt(pid) };
}

/**
 * When a process began, in ticks since the machine started, with that start; null where there is no /proc.
 * @param {number} pid
 */
function beganAt(pid) {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    // the second field, the program's name, may hold spaces and brackets: count from its end
    const ticks = stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19];
    return `${boot}:${ticks}`;
  } catch {
    return null;
  }
}

/** @param {string} path */
function readHolder(path) {
  const text = readFileSync(path, 'utf8');
  try {
    const { pid, began } = JSON.parse(text);
    return { text, holder: Number.isInteger(pid) ? { pid, began: began ?? null } : null };
  } catch {
    return { text, holder: null };
  }
}

/** @param {string} path @param {string} text */
function create(path, text) {
  try {
    const file = openSync(path, 'wx');
    writeSync(file, text);
    closeSync(file);
    return true;
  } catch (error) {
    if (/** @type {any} */ (error).code === 'EEXIST') return false;
    throw error;
  }
}

/**
 * Takes a stale lock file away. Two waiting processes may try at once, and the slower one would take the
 * winner's new file: so the file is moved first, looked at again, and put back when it is not the stale one.
 * @param {string} path
 * @param {string} staleText
 */
function removeStale(path, staleText) {
  const aside = `${path}.${process.pid}`;
  try {
    renameSync(path, aside);
  } catch {
    return; // someone else was faster
  }
  if (readFileSync(aside, 'utf8') === staleText) rmSync(aside);
  else renameSync(aside, path);
}

/**
 * Takes the lock, waiting while another living process holds it.
 * @param {string} path
 * @param {{ waitMs?: number, pollMs?: number, onWait?: (pid: number | null) => void }} [options]
 * @returns {Promise<() => void>} gives the lock back; safe to call twice
 */
export async function takeLock(path, { waitMs = 20 * 60_000, pollMs = 250, onWait = () => {} } = {}) {
  mkdirSync(dirname(path), { recursive: true });
  const mine = JSON.stringify({
    pid: process.pid,
    began: beganAt(process.pid),
    at: new Date().toISOString(),
  });
  const until = Date.now() + waitMs;
  let told = false;
  while (!create(path, mine)) {
    try {
      const { text, holder } = readHolder(path);
      if (isStale(holder, Date.now() - statSync(path).mtimeMs, lookAtProcess)) {
        removeStale(path, text);
        continue;
      }
      if (!told) onWait(holder?.pid ?? null);
      told = true;
    } catch (error) {
      if (/** @type {any} */ (error).code !== 'ENOENT') throw error;
      continue; // given back between our try and our look
    }
    if (Date.now() > until) {
      throw new PlainProblem(
        `Another start of Kitwright has been preparing this folder for too long: stop it, delete ${path} and start again.`,
      );
    }
    await sleep(pollMs);
  }
  let held = true;
  const giveBack = () => {
    if (!held) return;
    held = false;
    process.off('exit', giveBack);
    try {
      if (readFileSync(path, 'utf8') === mine) rmSync(path);
    } catch {
      // already gone
    }
  };
  process.on('exit', giveBack);
  return giveBack;
}
