import { existsSync, readFileSync } from 'node:fs';
import { DEMO_BADGES, DEMO_PASSWORD, DEMO_PIN } from '@/lib/people/demo';
import { expect, test } from './harness';
import { type Hospital, openHospital } from './harness/hospital';

/** Each is brought where such a thing is brought, and is then looked for where it must not be. */
const CANARY = {
  password: 'canary-password-7f3a9c',
  pin: '918273645546',
  badge: 'KW-BADGE-CANARY-51d0',
  token: 'canary-token-c41be2',
  session: 'canary-session-0e77aa',
  feed: 'canary-feed-93b2d4',
  query: 'canary-query-6b1f08',
  file: 'canary-file-a2d9e7',
  malformed: 'canary-malformed-e5c310',
  field: 'canary-field-44f6b9',
  header: 'canary-header-d80c52',
};
const METRICS = 'metrics-token-canary-2f96b1';
const FIRST_CODE = 'canary-first-code-b7714e';

test('no secret and nothing that was sent is in the log, the figures, the health answers or the database', async () => {
  test.skip(Boolean(process.env.BASE_URL), 'a server of its own');
  test.setTimeout(120_000);
  const hospital = await openHospital('secrets', {
    KITWRIGHT_METRICS_TOKEN: METRICS,
    KITWRIGHT_LOG_LEVEL: 'debug',
  });
  try {
    const site = hospital.address;
    const answers: string[] = [];
    const ask = async (path: string, init: RequestInit = {}) => {
      const answer = await fetch(site + path, { redirect: 'manual', ...init });
      const text = await answer.text();
      answers.push(`${answer.status} ${text}`);
      return { answer, text };
    };
    const json = (body: unknown, headers: Record<string, string> = {}): RequestInit => ({
      method: 'POST',
      headers: { 'Content-Type': 'application/json', ...headers },
      body: JSON.stringify(body),
    });

    const signedIn = await ask(
      '/api/v1/people/sign-in',
      json({ name: 'Edda Winslow', password: DEMO_PASSWORD }),
    );
    expect(signedIn.answer.status).toBe(200);
    const [cookie = ''] = signedIn.answer.headers
      .getSetCookie()
      .filter((one) => one.startsWith('__Host-session='));
    const [pair = ''] = cookie.split(';');
    const session = pair.split('=')[1] ?? '';
    expect(session.length).toBeGreaterThan(20);
    const by = { Cookie: pair };
    const feed = await ask('/api/v1/feeds', json({ label: 'Mine', scope: 'all' }, by));

    await ask('/api/v1/people/sign-in', json({ name: 'Edda Winslow', password: CANARY.password }));
    await ask('/api/v1/people/sign-in', json({ name: CANARY.field, password: CANARY.password }));
    await ask('/api/v1/people/badge', json({ badge: CANARY.badge, pin: CANARY.pin }));
    await ask('/api/v1/people/badge', json({ badge: DEMO_BADGES[0] ?? '', pin: DEMO_PIN }));
    await ask('/api/v1/people/first-run', json({ code: FIRST_CODE, name: 'X', password: CANARY.password }));
    await ask(
      '/api/v1/people/account',
      json({ password: CANARY.password, newPassword: CANARY.password }, by),
    );
    await ask(`/feeds/${CANARY.feed}`);
    await ask(`/feeds/${CANARY.feed}.ics?again=${CANARY.query}`);
    await ask('/sets', {
      headers: { Cookie: `__Host-session=${CANARY.session}`, Authorization: `Bearer ${CANARY.token}` },
    });
    await ask('/api/v1/sets/list', {
      headers: { Authorization: `Bearer ${CANARY.token}`, 'X-Note': CANARY.header },
    });
    await ask(`/catalogue?q=${CANARY.query}`, { headers: by });
    await ask(`/${CANARY.query}/${CANARY.query}?q=${CANARY.query}`, { headers: by });
    await ask(`/sets/set_${CANARY.query}`, { headers: by });
    await ask('/api/v1/scans', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', ...by },
      body: `{"a": ${CANARY.malformed}`,
    });
    const csv = Buffer.from(`Kennung;Zeit\n${CANARY.file};08:30\n`).toString('base64');
    await ask('/api/v1/cases/import', json({ file: csv, choices: { columns: {} }, digest: null }, by));
    await ask('/api/v1/exchange/people', json({ file: csv, choices: {} }, by));
    await ask('/fit/rules/new', {
      method: 'POST',
      headers: { ...by, 'Next-Action': CANARY.field, 'Content-Type': 'text/plain' },
      body: `["${CANARY.field}"]`,
    });
    await ask('/metrics');
    await ask('/metrics', { headers: { Authorization: `Bearer ${CANARY.token}` } });
    expect(answers.slice(-2).map((one) => one.slice(0, 3))).toEqual(['401', '401']);
    const { text: metrics, answer: measured } = await ask('/metrics', {
      headers: { Authorization: `Bearer ${METRICS}` },
    });
    expect(measured.status).toBe(200);
    const { text: ready } = await ask('/health/ready');
    const { text: health } = await ask('/health', { headers: by });

    const log = readFileSync(hospital.log, 'utf8');
    const lines = log
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    const requests = lines.filter(({ msg }) => msg === 'request');
    expect(requests.length).toBeGreaterThan(20);
    expect(requests.some(({ person }) => person === 'person_edda-winslow')).toBe(true);
    expect(requests.map(({ route }) => route)).toEqual(
      expect.arrayContaining(['/feeds/[token]', 'none', '/sets/[id]']),
    );
    for (const one of requests)
      expect(Object.keys(one).sort()).toEqual([
        'level',
        'method',
        'ms',
        'msg',
        'of',
        'person',
        'request',
        'route',
        'status',
        'time',
      ]);

    const secrets = { ...CANARY, metrics: METRICS, first: FIRST_CODE, demo: DEMO_PASSWORD, session };
    const feedSecret =
      /feeds\/([\w-]{16,})/.exec(feed.text)?.[1] ?? /"(?:secret|token)":"([^"]+)"/.exec(feed.text)?.[1];
    const places = { log, metrics, ready, health, output: hospital.serverOutput() };
    const found = Object.entries(places).flatMap(([where, text]) =>
      Object.entries({ ...secrets, ...(feedSecret ? { feedSecret } : {}) }).flatMap(([what, secret]) =>
        text.includes(secret) ? [`${what} is in the ${where}`] : [],
      ),
    );
    expect(found).toEqual([]);
    // what was typed for a person to find again may be kept; what opens a door may not
    const { password, pin, token, session: forged, feed: address } = CANARY;
    expect(
      inDatabase(hospital, [password, pin, token, forged, address, session, DEMO_PASSWORD, METRICS]),
    ).toEqual([]);
    // a refusal does not repeat a secret
    for (const [what, secret] of Object.entries({ password, pin, token, forged, address, FIRST_CODE }))
      expect(
        answers.filter((text) => text.includes(secret)),
        `${what} in an answer`,
      ).toEqual([]);
  } finally {
    await hospital.close();
  }
});

function inDatabase({ database }: Hospital, secrets: readonly string[]): string[] {
  const bytes = ['', '-wal'].flatMap((end) =>
    existsSync(database + end) ? [readFileSync(database + end)] : [],
  );
  return secrets.filter((secret) => bytes.some((part) => part.includes(secret)));
}

test('the figures are named, few in each label, and move with what happens', async () => {
  test.skip(Boolean(process.env.BASE_URL), 'a server of its own');
  const hospital = await openHospital('figures', { KITWRIGHT_METRICS_TOKEN: METRICS });
  try {
    const read = async () => {
      const answer = await fetch(`${hospital.address}/metrics`, {
        headers: { Authorization: `Bearer ${METRICS}` },
      });
      expect(answer.headers.get('content-type')).toMatch(/^text\/plain; version=0\.0\.4/);
      return answer.text();
    };
    const figure = (text: string, name: string) =>
      Number(
        text
          .split('\n')
          .find((line) => line.startsWith(`${name} `))
          ?.slice(name.length + 1),
      );
    const before = await read();
    expect(figure(before, 'kitwright_ledger_entries')).toBeGreaterThanOrEqual(1);
    expect(figure(before, 'kitwright_database_bytes')).toBeGreaterThan(1e6);
    expect(figure(before, 'kitwright_write_queue_length')).toBe(0);
    // the demo has no backup
    expect(figure(before, 'kitwright_backup_age_seconds')).toBeNaN();
    expect(before).toMatch(/^kitwright_backup_age_seconds nan$/im);
    for (const name of [
      'kitwright_write_log_bytes',
      'nodejs_eventloop_lag_p99_seconds',
      'kitwright_requests_in_flight',
    ])
      expect(before, name).toContain(`${name} `);

    const wrong = () =>
      fetch(`${hospital.address}/api/v1/people/sign-in`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({ name: 'Kofi Brandreth', password: 'not the password' }),
      });
    expect((await wrong()).status).toBe(401);
    for (let at = 0; at < 5; at += 1) await (await fetch(`${hospital.address}/nowhere/${at}?q=${at}`)).text();
    const after = await read();
    expect(figure(after, 'kitwright_sign_ins_refused_total{because="wrong"}')).toBe(1);
    expect(figure(after, 'kitwright_transaction_seconds_count')).toBeGreaterThan(
      figure(before, 'kitwright_transaction_seconds_count'),
    );
    expect(figure(after, 'kitwright_write_wait_seconds_count')).toBeGreaterThan(0);
    expect(after).toContain(
      'kitwright_request_seconds_count{method="POST",route="/api/v1/people/sign-in",status="4xx"} 1',
    );
    expect(after).toContain('kitwright_request_seconds_count{method="GET",route="none",status="4xx"} 5');
    // every label's values are of a list that the build fixes
    const routes = new Set([...after.matchAll(/route="([^"]*)"/g)].map(([, route]) => route ?? ''));
    for (const route of routes) expect(route).toMatch(/^(none|\/[\w./[\]*-]*)$/);
    expect(after).not.toContain('nowhere');
  } finally {
    await hospital.close();
  }
});

test('where no token is set there are no figures for anybody', async ({ baseURL, hospital }) => {
  test.skip(hospital === null, 'a server of its own');
  const answer = await fetch(`${baseURL}/metrics`, { headers: { Authorization: 'Bearer ' } });
  expect(answer.status).toBe(404);
});
