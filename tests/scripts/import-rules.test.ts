import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import rules from '@/.dependency-cruiser.mjs';
import { run } from '@/scripts/bootstrap/command.mjs';

/** A small house with a room of each kind, in which every import is allowed. */
const HOUSE: Record<string, string> = {
  'tsconfig.json': JSON.stringify({
    compilerOptions: { module: 'esnext', moduleResolution: 'bundler', paths: { '@/*': ['./*'] } },
    include: ['**/*.ts'],
  }),
  'package.json': JSON.stringify({
    name: 'house',
    type: 'module',
    dependencies: { zod: '1.0.0', react: '1.0.0', 'better-sqlite3': '1.0.0' },
    devDependencies: { vitest: '1.0.0' },
  }),
  ...Object.fromEntries(
    ['zod', 'react', 'better-sqlite3', 'vitest'].flatMap((name) => [
      [`node_modules/${name}/package.json`, JSON.stringify({ name, version: '1.0.0', main: 'index.js' })],
      [`node_modules/${name}/index.js`, 'module.exports = 1;'],
    ]),
  ),
  'lib/a.ts': "import 'zod';\nimport type { B } from './b';\nexport type A = B | 1;",
  'lib/b.ts': "import type { A } from './a';\nexport type B = A | 2;",
  'db/a.ts': "import 'better-sqlite3';\nimport '@/lib/a';",
  'app/a.ts': "import 'react';\nimport '@/db/a';\nimport '@/lib/a';",
  'app/_server/database.ts': "import '@/db/a';",
  'app/_server/enter.ts': "import './database';",
  'seed/a.ts': "import '@/db/a';\nimport '@/lib/a';",
  'tests/a.ts': "import 'vitest';\nimport '@/lib/a';\nimport '@/app/a';",
  'tests/bench/a.ts': "import '@/lib/a';",
  'scripts/bootstrap/a.mjs': "import 'node:fs';",
};

/** For each rule a file that breaks it, and no other rule. */
const BREACHES: Record<string, [path: string, text: string]> = {
  'lib-imports-only-lib': ['lib/screen.ts', "import '@/db/a';"],
  'lib-has-no-io': ['lib/file.ts', "import 'node:fs';"],
  'lib-uses-pure-packages': ['lib/react.ts', "import 'react';"],
  'db-imports-db-and-lib': ['db/screen.ts', "import '@/app/a';"],
  'db-knows-no-screen': ['db/react.ts', "import 'react';"],
  'app-imports-app-db-lib': ['app/seed.ts', "import '@/seed/a';"],
  'the-store-is-reached-by-entering': ['app/page.ts', "import '@/app/_server/database';"],
  'one-engine-behind-db': ['app/engine.ts', "import 'better-sqlite3';"],
  'seed-imports-seed-db-lib': ['seed/screen.ts', "import '@/app/a';"],
  'nothing-imports-tests': ['scripts/tests.ts', "import '@/tests/a';"],
  'bench-is-imported-by-nothing': ['tests/uses-bench.ts', "import '@/tests/bench/a';"],
  'bootstrap-uses-nothing-but-node': ['scripts/bootstrap/zod.mjs', "import 'zod';"],
  'no-circular': ['lib/self.ts', "import { y } from './self';\nexport const y = 1;\nexport const z = y;"],
  'nothing-unresolvable': ['lib/nowhere.ts', "import '@/lib/not-there';"],
  'no-test-packages-at-run-time': ['app/vitest.ts', "import 'vitest';"],
};

async function check(files: Record<string, string>) {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'kitwright-imports-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return run(process.execPath, ['scripts/testing/import-rules.mjs', folder]);
}

test('a house in order breaks no rule', async () => {
  const { ok, output } = await check(HOUSE);
  expect(output).toMatch(/^\d+ modules, \d+ imports seen$/m);
  expect(ok, output).toBe(true);
});

test('every rule notices its breach, and nothing else', async () => {
  const { ok, output } = await check({ ...HOUSE, ...Object.fromEntries(Object.values(BREACHES)) });
  const told = output
    .split('\n')
    .flatMap((line) => /^([a-z-]+): (\S+) → /.exec(line)?.slice(1, 3).join(' ') ?? [])
    .sort();
  expect(told).toEqual(
    Object.entries(BREACHES)
      .map(([rule, [path]]) => `${rule} ${path}`)
      .sort(),
  );
  expect(ok).toBe(false);
});

test('every rule has a breach to be tested by', () => {
  expect(Object.keys(BREACHES).sort()).toEqual((rules.forbidden ?? []).map(({ name }) => name).sort());
});

test('a tree in which nothing can be seen is no tree in order', async () => {
  const { ok, output } = await check({ 'tsconfig.json': HOUSE['tsconfig.json'] ?? '', 'outside.ts': '' });
  expect(ok).toBe(false);
  expect(output).toContain('no module was seen in lib/');
});
