import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ENDPOINTS, SCREENS } from '@/lib/people/access';
import { expect, test } from './harness';
import { sessionCookie } from './harness/act-as';
import { openHospital } from './harness/hospital';

const HOOK = pathToFileURL(resolve('tests/e2e/harness/outbound-hook.mjs')).href;
/** For documentation, and so nobody's (RFC 5737). */
const NOBODY = 'http://192.0.2.1/';

test('the running server opens no connection to another machine, whatever is asked of it', async () => {
  test.skip(Boolean(process.env.BASE_URL), 'a server of its own');
  test.setTimeout(420_000);
  const folder = mkdtempSync(join(tmpdir(), 'outbound-'));
  const notes = join(folder, 'notes');
  const noted = () => (existsSync(notes) ? readFileSync(notes, 'utf8').trim().split('\n') : []);
  try {
    // the hook sees what it is there for
    for (const attempt of [
      `await fetch('${NOBODY}')`,
      `(await import('node:https')).get('https://elsewhere.invalid/')`,
      `(await import('node:dns')).promises.lookup('elsewhere.invalid')`,
      `(await import('node:dgram')).createSocket('udp4').send('x', 9, '192.0.2.1')`,
    ])
      spawnSync(process.execPath, ['--import', HOOK, '--input-type=module', '-e', attempt], {
        env: { ...process.env, OUTBOUND_NOTES: notes },
      });
    expect(noted()).toEqual([
      'connect 192.0.2.1:80',
      expect.stringMatching(/^(connect|lookup) elsewhere\.invalid/),
      'lookup elsewhere.invalid',
      'a datagram',
    ]);
    rmSync(notes);

    const hospital = await openHospital('no-outbound', {
      NODE_OPTIONS: `--import ${HOOK}`,
      OUTBOUND_NOTES: notes,
    });
    try {
      const { name, value } = await sessionCookie(hospital.address, 'person_edda-winslow');
      // an address that asks to be followed, in every place where one could be put
      const headers = {
        Cookie: `${name}=${value}`,
        'X-Forwarded-Host': 'elsewhere.invalid',
        Referer: NOBODY,
      };
      const there = (route: string) =>
        route.replace(/\[(\w+)\]/g, (_, place) => (place === 'id' ? 'set_sfl-02' : 'none'));
      const reads = Object.keys(ENDPOINTS).flatMap((key) => (key.startsWith('GET ') ? [key.slice(4)] : []));
      let asked = 0;
      for (const route of [...Object.keys(SCREENS), ...reads]) {
        const answer = await fetch(
          `${hospital.address}${there(route)}?from=${encodeURIComponent(NOBODY)}&url=${NOBODY}`,
          {
            redirect: 'manual',
            headers,
          },
        );
        await answer.arrayBuffer();
        asked += 1;
      }
      for (const [method, route] of Object.keys(ENDPOINTS).map((key) => key.split(' '))) {
        if (method === 'GET' || route === '/api/v1/people/sign-out') continue;
        const answer = await fetch(hospital.address + there(route ?? ''), {
          method,
          headers: { ...headers, 'Content-Type': 'application/json' },
          body: JSON.stringify({
            url: NOBODY,
            href: NOBODY,
            address: NOBODY,
            file: Buffer.from(NOBODY).toString('base64'),
          }),
        });
        await answer.arrayBuffer();
        asked += 1;
      }
      expect(asked).toBeGreaterThan(250);
      expect(noted()).toEqual([]);
    } finally {
      await hospital.close();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
