import { describe, expect, test } from 'vitest';
import { browserDecision } from '@/scripts/bootstrap/browser.mjs';
import { buildNeeded } from '@/scripts/bootstrap/build.mjs';
import { fingerprint, isBuilt } from '@/scripts/bootstrap/fingerprint.mjs';
import { installDecision, isInstalled } from '@/scripts/bootstrap/install.mjs';
import { nodeProblem } from '@/scripts/bootstrap/node-version.mjs';

describe('the Node.js that is old enough to be refused', () => {
  test.each([
    ['20.9.0', true, 'the oldest that Next.js 16 runs on'],
    ['20.8.9', false, 'one minor before'],
    ['18.20.4', false, 'an older line'],
    ['20.20.2', true, 'compared as numbers: 20 is more than 9'],
    ['22.0.0', true, 'a smaller minor of a newer line'],
    ['24.1.0', true, 'newer'],
    ['9.11.2', false, 'compared as numbers: 9 is less than 20'],
  ])('%s runs: %s (%s)', (version, runs) => {
    const problem = nodeProblem(version);
    if (runs) expect(problem).toBeNull();
    else expect(problem).toContain(`this is ${version}`);
  });
});

describe('the fingerprint of the sources', () => {
  const files = [
    { path: 'app/page.tsx', content: 'one' },
    { path: 'lib/a.ts', content: 'two' },
  ];

  test('does not depend on the order of the files', () => {
    expect(fingerprint([...files].reverse())).toBe(fingerprint(files));
  });

  test.each([
    [
      'a changed content',
      [
        { path: 'app/page.tsx', content: 'other' },
        { path: 'lib/a.ts', content: 'two' },
      ],
    ],
    [
      'a file renamed',
      [
        { path: 'app/pages.tsx', content: 'one' },
        { path: 'lib/a.ts', content: 'two' },
      ],
    ],
    [
      'a file that is gone',
      [
        { path: 'app/page.tsx', content: null },
        { path: 'lib/a.ts', content: 'two' },
      ],
    ],
    [
      'contents swapped',
      [
        { path: 'app/page.tsx', content: 'two' },
        { path: 'lib/a.ts', content: 'one' },
      ],
    ],
    ['a file less', [{ path: 'app/page.tsx', content: 'one' }]],
  ])('changes with %s', (_why, changed) => {
    expect(fingerprint(changed)).not.toBe(fingerprint(files));
  });

  test('changes with what else the result depends on', () => {
    expect(fingerprint(files, 'node 20')).not.toBe(fingerprint(files, 'node 22'));
  });

  test.each([
    ['app/plans/page.tsx', true],
    ['lib/fit/rule.ts', true],
    ['db/migrations/0001-foundation.sql', true],
    ['next.config.mjs', true],
    ['package-lock.json', true],
    ['seed/load.ts', true],
    ['tests/e2e/smoke.spec.ts', false],
    ['scripts/serve.mjs', false],
    ['README.md', false],
    ['next-env.d.ts', false],
    ['.next/BUILD_ID', false],
    ['var/kitwright.sqlite', false],
  ])('%s calls for a new build: %s', (path, built) => {
    expect(isBuilt(path)).toBe(built);
  });
});

describe('whether packages must be installed', () => {
  const wanted = {
    packages: {
      '': {},
      'node_modules/next': { version: '16.4.6', integrity: 'sha512-a' },
      'node_modules/@next/swc-win32': { version: '16.4.6', integrity: 'sha512-b', optional: true },
    },
  };
  const installed = { packages: { 'node_modules/next': { version: '16.4.6', integrity: 'sha512-a' } } };
  const expected = 'hash1 linux-x64-115';

  test.each([
    ['nothing', 'the mark says so', expected, installed],
    ['install', 'the mark says so but npm was interrupted after', expected, null],
    ['install', 'an empty clone', null, null],
    ['mark', 'someone ran npm by hand', null, installed],
    ['mark', 'the lockfile changed and someone ran npm by hand', 'hash0 linux-x64-115', installed],
    ['install', 'compiled packages are of another Node.js', 'hash1 linux-x64-127', installed],
    [
      'install',
      'another version is there',
      'hash0 linux-x64-115',
      { packages: { 'node_modules/next': { version: '16.4.5', integrity: 'sha512-c' } } },
    ],
    [
      'install',
      'a package is there that is not asked for',
      null,
      { packages: { ...installed.packages, 'node_modules/left': { version: '1.0.0' } } },
    ],
  ])('%s when %s', (decision, _why, mark, there) => {
    expect(installDecision({ mark, expected, wanted, installed: there })).toBe(decision);
  });

  test('a package made for another system may be missing, an ordinary one may not', () => {
    expect(isInstalled(wanted, installed)).toBe(true);
    expect(isInstalled(wanted, { packages: {} })).toBe(false);
  });
});

describe('whether to build', () => {
  test.each([
    [true, 'it was never built', { mark: null, sources: 'a', complete: false }],
    [true, 'the sources changed', { mark: 'a', sources: 'b', complete: true }],
    [true, 'the last build did not finish', { mark: 'a', sources: 'a', complete: false }],
    [true, 'something else built it, of unknown sources', { mark: null, sources: 'a', complete: true }],
    [false, 'nothing changed', { mark: 'a', sources: 'a', complete: true }],
  ])('%s when %s', (needed, _why, state) => {
    expect(buildNeeded(state)).toBe(needed);
  });
});

describe('where the browser for the tests comes from', () => {
  // the line is from Debian 12's /etc/os-release
  const debian = 'PRETTY_NAME="Debian GNU/Linux 12 (bookworm)"\nID=debian\nVERSION_ID="12"\n';

  test('it is installed on Debian as root', () => {
    expect(browserDecision({ osRelease: debian, root: true, wish: undefined })).toEqual({ install: true });
  });

  test.each([
    [
      'Debian without root',
      { osRelease: debian, root: false, wish: undefined },
      'apt-get install chromium-headless-shell',
    ],
    [
      'another Linux',
      { osRelease: 'ID=fedora\nID_LIKE="debian"\n', root: true, wish: undefined },
      'KITWRIGHT_CHROMIUM',
    ],
    ['no Linux', { osRelease: '', root: false, wish: undefined }, 'install it from your system'],
    [
      'a wish for a program that is not there',
      { osRelease: debian, root: true, wish: '/opt/none' },
      '/opt/none',
    ],
  ])('%s: it says what to install', (_where, system, words) => {
    const decision = browserDecision(system);
    expect(decision.install).toBe(false);
    expect('sentence' in decision && decision.sentence).toContain(words);
  });
});
