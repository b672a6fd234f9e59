import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import { lastLines } from './command.mjs';
import { NEXT_BIN, ROOT, SERVER } from './places.mjs';
import { PlainProblem, plainSentence } from './plain-problem.mjs';

const READY_WITHIN_MS = 60_000;
const KEPT_OUTPUT = 20_000;

/**
 * Starts the built application (or the development server) and waits until it answers.
 * The built server ends with this process, even when this process is killed.
 * @param {{ port: number, host: string, database: string, dev?: boolean, show?: boolean, env?: Record<string, string> }} how
 *   `show`: pass on what the server prints, without its own greeting
 */
export async function startServer({ port, host, database, dev = false, show = false, env = {} }) {
  let output = '';
  let ready = false;
  const leash = ['--import', pathToFileURL(join(ROOT, 'scripts/bootstrap/end-with-parent.mjs')).href];
  const child = spawn(
    process.execPath,
    // the development server has a process of its own to which the leash would pass, and which needs its channel
    dev ? [NEXT_BIN, 'dev', '-p', String(port), '-H', host] : [...leash, SERVER],
    {
      cwd: ROOT,
      stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
      env: {
        ...process.env,
        NODE_ENV: dev ? 'development' : 'production',
        NEXT_TELEMETRY_DISABLED: '1',
        PORT: String(port),
        HOST: host,
        KITWRIGHT_DB: database,
        ...env,
      },
    },
  );
  child.channel?.unref();
  const take =
    (/** @type {NodeJS.WriteStream} */ screen, /** @type {boolean} */ always) =>
    (/** @type {Buffer} */ chunk) => {
      const text = chunk.toString();
      output = (output + text).slice(-KEPT_OUTPUT);
      if (!show) return;
      if (ready || always) screen.write(chunk);
      // lines of the log, where it goes to standard output, are not its greeting
      else for (const line of text.split('\n')) if (line.startsWith('{')) screen.write(`${line}\n`);
    };
  child.stdout.on('data', take(process.stdout, dev));
  child.stderr.on('data', take(process.stderr, true));
  /** @type {Promise<number | null>} */
  const ended = new Promise((resolve) => {
    child.on('error', (error) => {
      output += `${error.message}\n`;
      resolve(null);
    });
    child.on('close', (code) => resolve(code));
  });
  let over = false;
  ended.then(() => {
    over = true;
  });

  /** @param {number} withinMs */
  const stop = async (withinMs = 2000) => {
    if (over) return;
    child.kill('SIGTERM');
    const timer = setTimeout(() => child.kill('SIGKILL'), withinMs);
    await ended;
    clearTimeout(timer);
  };

  const address = `http://${host === '0.0.0.0' || host === '::' ? '127.0.0.1' : host}:${port}`;
  const until = Date.now() + READY_WITHIN_MS;
  while (!over && Date.now() < until) {
    if (await answers(address)) {
      ready = true;
      return { address, stop, ended, pid: child.pid, output: () => output };
    }
    await Promise.race([sleep(40), ended]);
  }
  await stop(0);
  const sentence = plainSentence(output, { folder: ROOT, port, database });
  throw new PlainProblem(
    sentence ??
      `The server did not answer within ${READY_WITHIN_MS / 1000} s: what it said last is shown above.`,
    { detail: sentence ? '' : lastLines(output) },
  );
}

/** Whether anything speaks HTTP there; the first answer also warms the home page. @param {string} address */
async function answers(address) {
  try {
    const answer = await fetch(address, { redirect: 'manual', signal: AbortSignal.timeout(30_000) });
    await answer.arrayBuffer();
    return true;
  } catch {
    return false;
  }
}
