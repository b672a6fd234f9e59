import { defineConfig } from '@playwright/test';
import { findBrowser } from './scripts/bootstrap/browser.mjs';

const browser = findBrowser(process.env);

export default defineConfig({
  testDir: 'tests/e2e',
  testMatch: '*.spec.ts',
  outputDir: 'var/test/browser',
  globalSetup: './tests/e2e/harness/global-setup.ts',
  // one file at a time per worker: a file has a hospital of its own, and its tests share it
  fullyParallel: false,
  workers: 2,
  retries: process.env.CI ? 1 : 0,
  forbidOnly: Boolean(process.env.CI),
  // a check with axe is four passes over the whole page, on a machine that may be busy
  timeout: 60_000,
  expect: { timeout: 7_000 },
  reporter: [['list'], ['json', { outputFile: 'var/test/playwright.json' }]],
  use: {
    browserName: 'chromium',
    viewport: { width: 1440, height: 900 },
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    trace: 'retain-on-failure',
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
