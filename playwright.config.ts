import { defineConfig } from '@playwright/test';
import { findBrowser } from './scripts/bootstrap/browser.mjs';

const browser = findBrowser(process.env);

export default defineConfig({
  testDir: 'tests/e2e',
  testMatch: '*.spec.ts',
  globalSetup: './tests/e2e/harness/global-setup.ts',
  // one file at a time per worker: a file has a hospital of its own, and its tests share it
  fullyParallel: false,
  workers: 2,
  // a test that holds the program to a time must not share two cores with another: `npm test` runs the one project after
  // the other. (As a dependency it would be left out when a test before it fails, as a teardown it would heed no filter.)
  projects: [
    { name: 'together', grepInvert: /@alone/, outputDir: 'var/test/browser/together' },
    { name: 'alone', grep: /@alone/, workers: 1, outputDir: 'var/test/browser/alone' },
  ],
  retries: process.env.CI ? 1 : 0,
  forbidOnly: Boolean(process.env.CI),
  // on a machine that may be busy with other things
  timeout: 60_000,
  expect: { timeout: 7_000 },
  reporter: [['list'], ['json', { outputFile: process.env.KITWRIGHT_REPORT ?? 'var/test/playwright.json' }]],
  use: {
    browserName: 'chromium',
    viewport: { width: 1440, height: 900 },
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    // without a film: making one takes as long as the page itself
    trace: { mode: 'retain-on-failure', screenshots: false },
    screenshot: 'only-on-failure',
    launchOptions: {
      ...(browser ? { executablePath: browser } : {}),
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--no-first-run',
      ],
    },
  },
});
