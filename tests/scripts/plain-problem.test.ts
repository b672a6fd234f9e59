import { createServer } from 'node:net';
import { describe, expect, test } from 'vitest';
import { run } from '@/scripts/bootstrap/command.mjs';
import { asPlainProblem, PlainProblem, plainSentence } from '@/scripts/bootstrap/plain-problem.mjs';
import { readPort, requireFreePort } from '@/scripts/bootstrap/port.mjs';

// The texts are what the programs named printed, copied from their output.
describe('each cause is told in one sentence', () => {
  const database = '/srv/kitwright.sqlite';
  test.each([
    [
      'npm without a network',
      'npm error code ENOTFOUND\nnpm error network request to https://registry.example/next failed, reason: getaddrinfo ENOTFOUND',
      { doing: 'installing' },
      'The npm registry cannot be reached',
    ],
    [
      'npm without name service',
      'npm error code EAI_AGAIN',
      { doing: 'installing' },
      'The npm registry cannot be reached',
    ],
    [
      'npm on a full disk',
      'npm warn tar TAR_ENTRY_ERROR ENOSPC: no space left on device, write',
      { doing: 'installing', folder: '/srv/k' },
      'The disk that holds /srv/k is full',
    ],
    [
      'npm in a read-only folder',
      "npm error code EROFS\nnpm error EROFS: read-only file system, mkdir '/srv/k/node_modules'",
      { doing: 'installing', folder: '/srv/k' },
      'cannot write to /srv/k',
    ],
    [
      'npm in a folder of someone else',
      'npm error code EACCES\nnpm error Error: EACCES: permission denied, mkdir',
      { doing: 'installing', folder: '/srv/k' },
      'cannot write to /srv/k',
    ],
    [
      'a lockfile that was not updated',
      'npm error `npm ci` can only install packages when your package.json and package-lock.json or npm-shrinkwrap.json are in sync.',
      { doing: 'installing' },
      'run "npm install" once',
    ],
    [
      'no compiler',
      'npm error gyp ERR! stack Error: not found: make',
      { doing: 'installing' },
      'install Python 3, make and a C++ compiler',
    ],
    [
      'a port in use',
      'Error: listen EADDRINUSE: address already in use 127.0.0.1:3000',
      { port: 3000 },
      'Port 3000 is taken by another program',
    ],
    [
      'a port for the system only',
      'Error: listen EACCES: permission denied 0.0.0.0:80',
      { port: 80 },
      'may not open port 80',
    ],
    [
      'a full disk under the database',
      'SqliteError: database or disk is full',
      { doing: 'database', folder: '/srv/k', database },
      'is full',
    ],
    [
      'a read-only database',
      'SqliteError: attempt to write a readonly database',
      { doing: 'database', database },
      `cannot write to the database ${database}`,
    ],
    [
      'a folder that cannot hold the database',
      'SqliteError: unable to open database file',
      { doing: 'database', database },
      `cannot write to the database ${database}`,
    ],
    [
      'a file that is no database',
      'SqliteError: file is not a database',
      { doing: 'database', database },
      `${database} is not a database`,
    ],
    [
      'a damaged database',
      'SqliteError: database disk image is malformed',
      { doing: 'database', database },
      'is damaged',
    ],
    [
      'a busy database',
      'SqliteError: database is locked',
      { doing: 'database', database },
      'Another program is writing',
    ],
    [
      'a database of a later version',
      'Error: the database is newer than this program: it has 0009-x.sql',
      { doing: 'database', database },
      'was made by a newer Kitwright',
    ],
    [
      'a database whose migration reads otherwise here',
      'Error: the migration 0001-foundation.sql was changed after it was applied',
      { doing: 'database', database },
      'another text of 0001-foundation.sql',
    ],
    [
      'a build without memory',
      'FATAL ERROR: Reached heap limit Allocation failed - JavaScript heap out of memory',
      { doing: 'building' },
      'ran out of memory',
    ],
    [
      'apt without a network',
      "E: Failed to fetch http://deb.example/x  Temporary failure resolving 'deb.example'",
      { doing: 'browser' },
      "Debian's packages cannot be reached",
    ],
  ] as const)('%s', (_cause, text, where, words) => {
    const sentence = plainSentence(text, where);
    expect(sentence).toContain(words);
    expect(sentence).toMatch(/^[^\n]+\.$/);
  });

  test('a failure that nobody foresaw gets no made-up sentence', () => {
    expect(plainSentence('TypeError: x is not a function', { doing: 'building' })).toBeNull();
  });

  test('an unforeseen error keeps its stack, a foreseen one does not show it', () => {
    expect(asPlainProblem(new Error('x is odd'), {}).detail).toContain('x is odd');
    const full = Object.assign(new Error('write failed'), { code: 'ENOSPC' });
    expect(asPlainProblem(full, { folder: '/srv/k' })).toMatchObject({
      detail: '',
      message: expect.stringContaining('/srv/k'),
    });
  });
});

describe('the port', () => {
  test.each([
    [undefined, 3000],
    ['', 3000],
    ['8080', 8080],
    ['0', 0],
    ['65535', 65535],
  ])('PORT=%s is %d', (text, port) => {
    expect(readPort(text)).toBe(port);
  });

  test.each(['abc', '-1', '65536', '3000.5', '0x10', '1e3'])('PORT=%s is refused by name', (text) => {
    expect(() => readPort(text)).toThrow(`PORT is "${text}"`);
  });

  test('one that something listens on is refused in one sentence, and given once it is free', async () => {
    const port = await requireFreePort(0, '127.0.0.1');
    const other = createServer().listen(port, '127.0.0.1');
    await new Promise((resolve) => other.once('listening', resolve));
    const refused = await requireFreePort(port, '127.0.0.1').catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(PlainProblem);
    expect(refused).toMatchObject({ message: expect.stringContaining(`Port ${port} is taken`) });
    await new Promise((resolve) => other.close(resolve));
    expect(await requireFreePort(port, '127.0.0.1')).toBe(port);
  });
});

describe('running a program', () => {
  test('gives its exit code and both its outputs', async () => {
    const outcome = await run(process.execPath, [
      '-e',
      'console.log("a"); console.error("b"); process.exit(3)',
    ]);
    expect(outcome).toMatchObject({ ok: false, code: 3 });
    expect(outcome.output).toContain('a\n');
    expect(outcome.output).toContain('b\n');
  });

  test('one that does not exist is a failure that says so, not an exception', async () => {
    const outcome = await run('no-such-program-anywhere', []);
    expect(outcome).toMatchObject({ ok: false, code: null });
    expect(outcome.output).toContain('ENOENT');
  });
});
