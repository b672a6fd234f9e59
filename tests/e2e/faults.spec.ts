import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, rmSync } from 'node:fs';
import { requireFreePort } from '../../scripts/bootstrap/port.mjs';
import { killServer } from '../faults/killServer';
import { stopServer } from '../faults/stopServer';
import { expect, test } from './harness';
import { TEMPLATE } from './harness/hospital';

/** A few of the two hundred kills of `npm run faults`, on a server of their own. */
test('killed five times while scans come in, the server loses nothing it acknowledged and has nothing twice', async () => {
  test.skip(Boolean(process.env.BASE_URL), 'needs the build');
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
