import { execFileSync, spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { listSources, sourcesFingerprint } from '@/scripts/bootstrap/fingerprint.mjs';
import { isStale, takeLock } from '@/scripts/bootstrap/lock.mjs';

function folderWith(files: Record<string, string>): string {
  const folder = mkdtempSync(join(tmpdir(), 'kitwright-folder-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

const SOURCES = {
  'package.json': '{}',
  'app/page.tsx': 'page',
  'lib/new.ts': 'new',
  'node_modules/next/index.js': 'package',
  '.next/BUILD_ID': 'built',
  'var/log/build.log': 'log',
};
const LISTED = ['app/page.tsx', 'lib/new.ts', 'package.json'];

describe('the sources of a folder', () => {
  const git = (folder: string, ...args: string[]) =>
    execFileSync('git', args, { cwd: folder, stdio: 'pipe' });

  test('are what git tracks and what it would track', () => {
    const folder = folderWith({ ...SOURCES, '.gitignore': 'secret.txt\n', 'secret.txt': 'x' });
    git(folder, 'init', '-q');
    git(folder, 'add', 'package.json', 'app');
    expect(listSources(folder)).toEqual(['.gitignore', ...LISTED]);
  });

  test('are what lies in the folder when it is no checkout', () => {
    expect(listSources(folderWith(SOURCES))).toEqual(LISTED);
  });

  test('are what lies in the folder when an outer checkout ignores it', () => {
    const outer = folderWith({ '.gitignore': 'inner/\n' });
    git(outer, 'init', '-q');
    const inner = join(outer, 'inner');
    mkdirSync(join(inner, 'app'), { recursive: true });
    writeFileSync(join(inner, 'package.json'), '{}');
    writeFileSync(join(inner, 'app/page.tsx'), 'page');
    expect(listSources(inner)).toEqual(['app/page.tsx', 'package.json']);
  });

  test('give another fingerprint once one of them changes, and the same one while none does', () => {
    const folder = folderWith(SOURCES);
    const before = sourcesFingerprint(folder, '20.9.0');
    writeFileSync(join(folder, 'README.md'), 'text');
    writeFileSync(join(folder, '.next/BUILD_ID'), 'other');
    expect(sourcesFingerprint(folder, '20.20.2')).toBe(before);
    writeFileSync(join(folder, 'lib/new.ts'), 'newer');
    expect(sourcesFingerprint(folder, '20.9.0')).not.toBe(before);
  });
});

describe('the lock on preparing a folder', () => {
  const lockIn = (files: Record<string, string> = {}) => join(folderWith(files), 'prepare.lock');

  test('is held by one at a time, in turn', async () => {
    const path = lockIn();
    let inside = 0;
    let most = 0;
    const work = async () => {
      const giveBack = await takeLock(path, { pollMs: 2 });
      inside += 1;
      most = Math.max(most, inside);
      await new Promise((resolve) => setTimeout(resolve, 5));
      inside -= 1;
      giveBack();
    };
    await Promise.all([work(), work(), work(), work()]);
    expect(most).toBe(1);
    expect(existsSync(path)).toBe(false);
  });

  test('is waited for while its holder lives, and the holder is named', async () => {
    const path = lockIn();
    const giveBack = await takeLock(path);
    let named: number | null = null;
    const second = takeLock(path, {
      pollMs: 2,
      onWait: (pid) => {
        named = pid;
        giveBack();
      },
    });
    (await second)();
    expect(named).toBe(process.pid);
  });

  test('is taken over from a process that was killed', async () => {
    const path = lockIn();
    const lockModule = JSON.stringify(new URL('../../scripts/bootstrap/lock.mjs', import.meta.url).href);
    const program = `import(${lockModule}).then(({ takeLock }) => takeLock(${JSON.stringify(path)})).then(() => { console.log('held'); setInterval(() => {}, 1000); });`;
    const holder = spawn(process.execPath, ['-e', program], { stdio: ['ignore', 'pipe', 'inherit'] });
    await new Promise((resolve) => holder.stdout.once('data', resolve));
    const gone = new Promise((resolve) => holder.once('exit', resolve));
    holder.kill('SIGKILL');
    await gone;
    expect(existsSync(path)).toBe(true);
    (await takeLock(path, { waitMs: 2000, pollMs: 2 }))();
  });

  test('that a crash left without a name is waited for briefly, then taken over', async () => {
    const path = lockIn({ 'prepare.lock': '' });
    const refused = await takeLock(path, { waitMs: 20, pollMs: 2 }).catch((error: unknown) => error);
    expect(refused).toMatchObject({ name: 'PlainProblem', message: expect.stringContaining(path) });
    const longAgo = new Date(Date.now() - 60_000);
    utimesSync(path, longAgo, longAgo);
    const giveBack = await takeLock(path, { waitMs: 2000, pollMs: 2 });
    expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ pid: process.pid });
    giveBack();
  });

  test.each([
    ['lives', { pid: 7, began: 'boot:100' }, { alive: true, began: 'boot:100' }, false],
    ['is gone', { pid: 7, began: 'boot:100' }, { alive: false, began: null }, true],
    [
      'is gone and its number was given again',
      { pid: 7, began: 'boot:100' },
      { alive: true, began: 'boot:900' },
      true,
    ],
    [
      'lives where the system tells no beginnings',
      { pid: 7, began: null },
      { alive: true, began: null },
      false,
    ],
  ])('a holder that %s', (_what, holder, found, stale) => {
    expect(isStale(holder, 0, () => found)).toBe(stale);
  });
});
