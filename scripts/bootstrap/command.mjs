import { spawn } from 'node:child_process';
import { createWriteStream, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { ROOT } from './places.mjs';

/** How much of a program's output is kept to look for what went wrong, in characters. */
const KEPT_OUTPUT = 60_000;

const COLOURS = { FORCE_COLOR: '1', NO_COLOR: undefined };
const NO_COLOURS = { FORCE_COLOR: undefined, NO_COLOR: '1' };

/** @type {Set<import('node:child_process').ChildProcess>} */
const running = new Set();
let stopping = false;

/** After this, SIGINT, SIGTERM and SIGHUP end what `run` started before they end this process. */
export function stopCommandsOnSignal() {
  for (const [signal, number] of /** @type {const} */ ([
    ['SIGINT', 2],
    ['SIGTERM', 15],
    ['SIGHUP', 1],
  ])) {
    process.on(signal, () => {
      stopping = true;
      for (const child of running) child.kill('SIGTERM');
      const leave = () => process.exit(128 + number);
      if (running.size === 0) leave();
      setTimeout(() => {
        for (const child of running) child.kill('SIGKILL');
        leave();
      }, 3000).unref();
      setInterval(() => running.size === 0 && leave(), 50).unref();
    });
  }
}

/**
 * Runs a program to its end. Never rejects: a program that cannot be started has `code` null and says why in `output`.
 * @param {string} program
 * @param {string[]} args
 * @param {{ env?: Record<string, string | undefined>, show?: 'all' | 'nothing', log?: string, cwd?: string }} [options]
 *   `show` says what reaches the screen; `log` is a file that gets everything
 * @returns {Promise<{ ok: boolean, code: number | null, output: string, seconds: number }>}
 */
export function run(program, args, { env = {}, show = 'nothing', log, cwd = ROOT } = {}) {
  const began = performance.now();
  return new Promise((resolve) => {
    let output = '';
    let file = null;
    if (log) {
      mkdirSync(dirname(log), { recursive: true });
      file = createWriteStream(log);
      file.on('error', () => {}); // a log that cannot be written must not stop the work
    }
    const child = spawn(program, args, {
      cwd,
      // colours are for a screen; in a log they are noise
      env: { ...process.env, ...(show === 'all' && process.stdout.isTTY ? COLOURS : NO_COLOURS), ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    running.add(child);
    const take = (/** @type {NodeJS.WriteStream} */ screen) => (/** @type {Buffer} */ chunk) => {
      output = (output + chunk.toString()).slice(-KEPT_OUTPUT);
      file?.write(chunk);
      if (show === 'all') screen.write(chunk);
    };
    child.stdout.on('data', take(process.stdout));
    child.stderr.on('data', take(process.stderr));
    const finish = (/** @type {number | null} */ code) => {
      if (!running.delete(child)) return;
      file?.end();
      resolve({ ok: code === 0, code, output, seconds: (performance.now() - began) / 1000 });
    };
    child.on('error', (error) => {
      output += `${/** @type {any} */ (error).code ?? ''} ${error.message}\n`;
      finish(null);
    });
    child.on('close', finish);
  });
}

/** True once a signal has asked this process to stop: what fails after that is no failure. */
export function isStopping() {
  return stopping;
}

/**
 * The last lines of a program's output, for showing above a sentence.
 * @param {string} output
 * @param {number} lines
 */
export function lastLines(output, lines = 25) {
  return output.trimEnd().split('\n').slice(-lines).join('\n');
}
