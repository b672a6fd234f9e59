// npm run test:clean [-- --with-tests]
// What a newcomer does: clone, npm start, look, stop; again; and, when asked, npm test twice. Takes some minutes, so
// it is no part of npm test. It checks what is committed, not what lies in the working folder.
import assert from 'node:assert/strict';
import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { ROOT } from '../../scripts/bootstrap/places.mjs';
import { requireFreePort } from '../../scripts/bootstrap/port.mjs';

const FIRST_START_MS = 15 * 60_000;
const SECOND_START_MS = 15_000;
const STOP_MS = 5_000;
const RESET_MS = 10_000;
const TESTS_MS = 60 * 60_000;

let passed = 0;
let failed = 0;
const folder = mkdtempSync(join(tmpdir(), 'kitwright-clone-'));
const clone = join(folder, 'kitwright');
const port = await requireFreePort(0, '127.0.0.1');

// what this run was started with must not help the clone
const env = Object.fromEntries(
  Object.entries(process.env).filter(
    ([name]) => !/^(npm_|KITWRIGHT_|NODE_|INIT_CWD|PORT$|HOST$)/i.test(name),
  ),
);

/** @param {string[]} args @param {Record<string, string>} [more] */
function npm(args, more = {}) {
  const child = spawn('npm', args, {
    cwd: clone,
    env: { ...env, ...more },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const told = { text: '' };
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (chunk) => {
      told.text += chunk;
      process.stdout.write(`  | ${String(chunk).trimEnd().replaceAll('\n', '\n  | ')}\n`);
    });
  }
  /** @type {Promise<number | null>} */
  const ended = new Promise((resolve) => child.on('close', resolve));
  return { child, told, ended };
}

/** @param {Promise<unknown>} work @param {number} ms @param {string} what */
async function within(work, ms, what) {
  const late = sleep(ms, 'late', { ref: false });
  assert.notEqual(
    await Promise.race([work.then(() => 'done'), late]),
    'late',
    `${what} within ${ms / 1000} s`,
  );
}

/** @param {ReturnType<typeof npm>} start */
async function untilReady({ told, ended }) {
  let over = false;
  ended.then(() => {
    over = true;
  });
  while (!told.text.includes(`Kitwright is at http://localhost:${port}`)) {
    assert.ok(!over, 'npm start ended before it served');
    await sleep(50);
  }
  const answer = await fetch(`http://127.0.0.1:${port}/`);
  assert.equal(answer.status, 200, 'the home page answers');
  assert.match(await answer.text(), /<h1/, 'the home page has a heading');
}

/** @param {string} title @param {() => Promise<void>} work */
async function step(title, work) {
  console.log(`\n${title}`);
  const began = performance.now();
  try {
    await work();
    passed += 1;
    console.log(`ok: ${title} (${((performance.now() - began) / 1000).toFixed(1)} s)`);
  } catch (error) {
    failed += 1;
    console.log(`FAILED: ${title}: ${error instanceof Error ? error.message : error}`);
  }
}

/** @type {ReturnType<typeof npm> | null} */
let running = null;

/** @param {number} ms */
async function startWithin(ms) {
  running = npm(['start'], { PORT: String(port) });
  await within(untilReady(running), ms, 'npm start');
}

async function stopInTime() {
  assert.ok(running, 'there is a server to stop');
  running.child.kill('SIGTERM');
  await within(running.ended, STOP_MS, 'the end after SIGTERM');
  await requireFreePort(port, '127.0.0.1');
  running = null;
}

try {
  execFileSync('git', ['clone', '--quiet', '--no-hardlinks', ROOT, clone], { stdio: 'inherit' });
  await step('npm start in an empty clone', () => startWithin(FIRST_START_MS));
  await step('a second server on the same port says so in one sentence', async () => {
    const second = npm(['start', '--silent'], { PORT: String(port) });
    assert.equal(await second.ended, 1, 'exit code');
    assert.match(second.told.text, new RegExp(`^Port ${port} is taken by another program[^\n]*\n$`));
  });
  await step('npm run demo:reset while it serves', async () => {
    const reset = npm(['run', '--silent', 'demo:reset']);
    await within(reset.ended, RESET_MS, 'npm run demo:reset');
    assert.equal(await reset.ended, 0, 'exit code');
    const answer = await fetch(`http://127.0.0.1:${port}/`);
    assert.equal(answer.status, 200, 'the home page still answers');
  });
  await step('SIGTERM ends it', stopInTime);
  await step('npm start again, with nothing changed', async () => {
    await startWithin(SECOND_START_MS);
    assert.doesNotMatch(
      running?.told.text ?? '',
      /Installing|Building/,
      'nothing is installed or built again',
    );
  });
  await step('SIGTERM ends it again', stopInTime);
  await step('the working tree of the clone is as it was', async () => {
    assert.equal(execFileSync('git', ['status', '--porcelain'], { cwd: clone, encoding: 'utf8' }), '');
  });
  await step('a port that something else holds', async () => {
    const other = createServer().listen(port, '127.0.0.1');
    const start = npm(['start', '--silent'], { PORT: String(port) });
    assert.equal(await start.ended, 1, 'exit code');
    assert.match(start.told.text, /is taken by another program/);
    other.close();
  });
  if (process.argv.includes('--with-tests')) {
    for (const time of ['once', 'and again']) {
      await step(`npm test ${time}`, async () => {
        const tests = npm(['test'], { CI: 'true' });
        await within(tests.ended, TESTS_MS, 'npm test');
        assert.equal(await tests.ended, 0, 'exit code');
        assert.match(tests.told.text.trimEnd().split('\n').at(-1) ?? '', /^\d+ passed, 0 failed/);
      });
    }
  }
} finally {
  running?.child.kill('SIGTERM');
  await running?.ended;
  rmSync(folder, { recursive: true, force: true });
}
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
