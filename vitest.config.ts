import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('.', import.meta.url)).replace(/\/$/, '');
const never = ['tests/e2e/**', 'tests/bench/**'];
const tests = '*.test.{ts,tsx,mjs}';
// what holds the program to a time runs after all else, one file at a time: beside others it would measure them
const timed = 'tests/**/*.timed.test.ts';

export default defineConfig({
  resolve: {
    alias: [
      { find: /^@\//, replacement: `${root}/` },
      // a test is no browser: what is for the server alone may be loaded
      { find: /^server-only$/, replacement: `${root}/node_modules/server-only/empty.js` },
      // what a request brings is told by the test that sends it
      { find: /^next\/headers$/, replacement: `${root}/tests/setup/next-headers.ts` },
    ],
  },
  test: {
    // two cores: a third worker would only wait
    maxWorkers: 2,
    // a worker loads the program once, not once for each of its files; no test leaves anything behind in a module
    isolate: false,
    // a machine shared with others may stall a test for seconds; what must be fast is measured by the benches
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // the same everywhere, whatever the machine is set to; dates that depend on it are then found by both
    env: { TZ: 'Europe/London', LANG: 'en_GB.UTF-8' },
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: [`tests/**/${tests}`],
          exclude: [...never, timed, `tests/{db,faults,seed}/**`, `tests/**/*.db.test.ts`],
          pool: 'threads',
        },
      },
      {
        extends: true,
        test: {
          name: 'database',
          include: [`tests/{db,faults,seed}/**/${tests}`, 'tests/**/*.db.test.ts'],
          exclude: [...never, timed],
          globalSetup: ['tests/setup/template-database.ts'],
          pool: 'forks',
        },
      },
      {
        extends: true,
        test: {
          name: 'timed',
          include: [timed],
          globalSetup: ['tests/setup/template-database.ts'],
          pool: 'forks',
          fileParallelism: false,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
