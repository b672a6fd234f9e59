import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { VARIABLES } from '@/lib/running/configuration';
import { PlainProblem } from '../../../scripts/bootstrap/plain-problem.mjs';
import { errorFields, logLevel, logPlace, openLog, withoutQuotes } from '../../../scripts/server/log.mjs';
import { patternFinder } from '../../../scripts/server/patterns.mjs';

test('the log lies beside the database unless another place is told', () => {
  expect(logPlace({}, '/srv/kitwright/data.sqlite')).toBe('/srv/kitwright/log/kitwright.log');
  expect(logPlace({ KITWRIGHT_LOG: ' - ' }, '/x/y')).toBe('-');
});

test('a place where no log can be is told in words, with what to do', () => {
  const folder = mkdtempSync(join(tmpdir(), 'log-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  for (const [place, why] of [
    [folder, 'it is a folder'],
    [join(import.meta.filename, 'kitwright.log'), 'a file is where its folder should be'],
  ] as const) {
    expect(() => openLog({ place, of: 'start' })).toThrow(PlainProblem);
    expect(() => openLog({ place, of: 'start' })).toThrow(
      `The log cannot be written to ${place} (${why}): name`,
    );
  }
});

test('a level that is none is no reason to fall over: what is wrong in the environment is said in words later', () => {
  const { schema } = VARIABLES.find(({ name }) => name === 'KITWRIGHT_LOG_LEVEL') ?? {};
  for (const level of ['debug', 'info', 'warn', 'error', 'silent']) {
    expect(logLevel({ KITWRIGHT_LOG_LEVEL: ` ${level} ` })).toBe(level);
    expect(schema?.safeParse(level).success).toBe(true);
  }
  for (const level of ['loud', 'INFO', 'trace', '', undefined]) {
    expect(logLevel({ KITWRIGHT_LOG_LEVEL: level })).toBe('info');
    expect(schema?.safeParse(level).success).toBe(false);
  }
});

test('each line is one object with its level and moment; an error has its stack and nothing that hangs on it', () => {
  const folder = mkdtempSync(join(tmpdir(), 'log-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const place = join(folder, 'deep', 'kitwright.log');
  const log = openLog({ place, level: 'info', of: 'server' });
  const error = Object.assign(new TypeError('it broke'), {
    code: 'SQLITE_FULL',
    digest: '123',
    body: 'SECRET-BODY',
    request: { headers: { cookie: 'SECRET-COOKIE' } },
    cause: new Error('SECRET-CAUSE'),
  });
  log.debug('not asked for');
  log.error({ err: error, route: '/sets/[id]' }, 'not answered');
  const text = readFileSync(place, 'utf8');
  const lines = text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatchObject({
    level: 'error',
    of: 'server',
    route: '/sets/[id]',
    msg: 'not answered',
    err: { type: 'TypeError', message: 'it broke', code: 'SQLITE_FULL', digest: '123' },
  });
  expect(lines[0].err.stack).toContain('log.test.ts');
  expect(Date.parse(lines[0].time)).toBeGreaterThan(0);
  expect(text).not.toContain('SECRET');
  expect(errorFields('SECRET')).toEqual({ type: 'string' });
});

test('an address is known by its pattern, and what was typed never becomes one', () => {
  // as the framework writes them into its list
  const patternOf = patternFinder(
    [
      { page: '/', regex: '^/(?:/)?$' },
      { page: '/sets', regex: '^/sets(?:/)?$' },
    ],
    [
      { page: '/feeds/[token]', regex: '^/feeds/([^/]+?)(?:/)?$' },
      { page: '/sets/[id]', regex: '^/sets/([^/]+?)(?:/)?$' },
    ],
  );
  expect(patternOf('/')).toBe('/');
  expect(patternOf('/sets/')).toBe('/sets');
  expect(patternOf('/feeds/SECRET')).toBe('/feeds/[token]');
  expect(patternOf('/sets/%2e%2e/SECRET')).toBe('none');
  expect(patternOf('//SECRET')).toBe('none');
  expect(patternOf('/_next/static/chunks/SECRET.js')).toBe('/_next/static/*');
});

test.each([
  ['Unexpected token \'S\', "SECRET" is not valid JSON', 'Unexpected token “…”, “…” is not valid JSON'],
  ['Failed to find Server Action "SECRET". This may be', 'Failed to find Server Action “…”. This may be'],
  ['there is no `SECRET` and no “SECRET”', 'there is no “…” and no “…”'],
  ["it can't be, and isn't", "it can't be, and isn't"],
])('of a fault that says %s nothing is kept that it quotes', (said, kept) => {
  expect(withoutQuotes(said)).toBe(kept);
  expect(JSON.stringify(errorFields(new SyntaxError(said)))).not.toContain('SECRET');
});
