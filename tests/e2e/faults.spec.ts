import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, rmSync } from 'node:fs';
import { requireFreePort } from '../../scripts/bootstrap/port.mjs';
import { burdenServer } from '../faults/clients/suite';
import { clock } from '../faults/clock/suite';
import { disk } from '../faults/disk/suite';
import { killServer } from '../faults/killServer';
import { proxy } from '../faults/proxy/suite';
import { stopServer } from '../faults/stopServer';
import { CannotTry } from '../faults/suite';
import { ALONE, expect, test } from './harness';
import { TEMPLATE } from './harness/hospital';

/** A little of each suite of `npm run test:faults` that needs the built server, on servers of their own. */
const asked = (size: number) => ({ size, seed: 7, template: TEMPLATE, say: () => {} });

test.skip(Boolean(process.env.BASE_URL), 'needs the build');
// each starts servers of its own, and waits for what they know of their health to be new
test.describe.configure({ timeout: 240_000 });

test('killed five times while scans come in, the server loses nothing it acknowledged and has nothing twice', async () => {
  const outcome = await killServer({ kills: 5, seed: 7, template: TEMPLATE });
  expect(outcome.faults).toEqual([]);
  expect(outcome.acknowledged).toBeGreaterThanOrEqual(3);
  expect(outcome.stored).toBeGreaterThanOrEqual(outcome.acknowledged);
});

for (const signal of ['SIGTERM', 'SIGINT'] as const) {
  test(`asked to stop by ${signal} while scans come in, the server ends within five seconds and loses nothing it acknowledged`, async () => {
    test.skip(Boolean(process.env.BASE_URL), 'needs the build');
    const outcome = await stopServer(TEMPLATE, signal);
    expect(outcome.faults).toEqual([]);
    expect(outcome.strange).toEqual([]);
    expect(outcome.code).toBe(0);
    expect(outcome.ms).toBeLessThan(5000);
    expect(outcome.acknowledged).toBeGreaterThanOrEqual(10);
    // each scanner has one scan on its way at most
    expect(outcome.unanswered).toBeLessThanOrEqual(8);
  });
}

test('npm start’s own process passes the signal on, and ends well within five seconds', async () => {
  test.skip(Boolean(process.env.BASE_URL) || Boolean(process.env.KITWRIGHT_DIST), 'needs the usual build');
  const port = await requireFreePort(0, '127.0.0.1');
  const database = `${TEMPLATE}.start-${port}`;
  copyFileSync(TEMPLATE, database);
  const started = spawn(process.execPath, ['scripts/serve.mjs'], {
    env: {
      ...process.env,
      PORT: String(port),
      KITWRIGHT_DB: database,
      KITWRIGHT_LOG: '-',
      HOST: '127.0.0.1',
    },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  try {
    let said = '';
    started.stdout.on('data', (part: Buffer) => {
      said += part;
    });
    await expect.poll(() => said, { timeout: 50_000 }).toContain(`http://localhost:${port}`);
    // a browser that keeps its connection
    await (await fetch(`http://127.0.0.1:${port}/health/live`)).text();
    const began = performance.now();
    started.kill('SIGTERM');
    const [code] = await once(started, 'exit');
    expect(performance.now() - began).toBeLessThan(5000);
    expect(code).toBe(0);
    const lines = said.split('\n').flatMap((line) => (line.startsWith('{') ? [JSON.parse(line)] : []));
    expect(lines.map(({ of, msg }) => `${of}: ${msg}`)).toEqual(
      expect.arrayContaining([
        'start: database prepared and migrated',
        'server: started',
        'start: asked to stop',
        'server: stopping',
        'server: stopped',
        'start: ended',
      ]),
    );
    await expect(fetch(`http://127.0.0.1:${port}/health/live`)).rejects.toThrow();
  } finally {
    started.kill('SIGKILL');
    for (const end of ['', '-wal', '-shm', '-heads.jsonl', '.prepare.lock'])
      rmSync(database + end, { force: true });
  }
});

test('on a full disk, and one that may only be read, writes are refused in words, reading goes on, and writing resumes', async () => {
  try {
    const found = await disk.run(asked(3));
    expect(found.faults).toEqual([]);
    expect(found.tried).toBeGreaterThanOrEqual(4);
  } catch (error) {
    if (error instanceof CannotTry) test.skip(true, error.message);
    throw error;
  }
});

test('what a bad network loses and doubles is there once: scans, bench entries, receipts and entries of use', async () => {
  const found = await proxy.run(asked(40));
  expect(found.faults).toEqual([]);
  expect(found).toMatchObject({ tried: 40, acknowledged: 40, lost: 0 });
});

test('a clock that is set back is said, and work goes on', async () => {
  const found = await clock.run(asked(4));
  expect(found.faults).toEqual([]);
  expect(found).toMatchObject({ tried: 4, acknowledged: 4, lost: 0 });
});

test('beside slow and dead clients others are served', ALONE, async () => {
  const found = await burdenServer({ clients: 24, limits: [], template: TEMPLATE, say: () => {} });
  expect(found.faults).toEqual([]);
});
