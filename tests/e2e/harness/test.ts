import { test as base, expect } from '@playwright/test';
import { FIRST_TECHNICIAN, sessionCookie } from './act-as';
import { watchAnswers } from './api-answers';
import { type Hospital, openHospital } from './hospital';
import { type PageProblems, watchPage } from './page-problems';

/** Gives each spec file its own server and its own fresh demo hospital; the tests of one file share them. */
interface Hospitals {
  forFile(file: string): Promise<Hospital>;
}

interface TestFixtures {
  /** The server and database of this spec file. Null when BASE_URL names a running server. */
  hospital: Hospital | null;
  /** What went wrong on the page; the test fails at its end unless each was expected with `problems.expect`. */
  problems: PageProblems;
}

interface WorkerFixtures {
  hospitals: Hospitals;
}

/**
 * Playwright's `test` for this application. Every page is watched: an error in the console, an exception, a request
 * that failed or that left this machine fails the test.
 */
export const test = base.extend<TestFixtures, WorkerFixtures>({
  hospitals: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the needed fixtures from this pattern
    async ({}, use) => {
      let open: { file: string; hospital: Hospital } | null = null;
      await use({
        async forFile(file) {
          if (open?.file === file) return open.hospital;
          await open?.hospital.close();
          open = null;
          const hospital = await openHospital(file);
          open = { file, hospital };
          return hospital;
        },
      });
      await (open as { hospital: Hospital } | null)?.hospital.close();
    },
    { scope: 'worker', timeout: 90_000 },
  ],

  hospital: [
    async ({ hospitals }, use, testInfo) => {
      const hospital = process.env.BASE_URL ? null : await hospitals.forFile(testInfo.file);
      await use(hospital);
      if (hospital && testInfo.status !== testInfo.expectedStatus) {
        await testInfo.attach('server output', { body: hospital.serverOutput(), contentType: 'text/plain' });
      }
    },
    { timeout: 90_000 },
  ],

  baseURL: async ({ hospital }, use) => use(hospital?.address ?? process.env.BASE_URL),

  // who says nothing acts as the first technician; `actAs` changes it, and `test.use({ storageState: SIGNED_OUT })` undoes it
  storageState: async ({ baseURL }, use) => {
    await use({ cookies: [await sessionCookie(baseURL ?? '', FIRST_TECHNICIAN)], origins: [] });
  },

  problems: [
    async ({ page, baseURL }, use) => {
      const problems = await watchPage(page, baseURL ?? '');
      const answers = watchAnswers(page);
      await use(problems);
      expect(problems.unexpected(), 'errors on the page').toEqual([]);
      expect(await answers.undescribed(), 'answers that are not as the API is described').toEqual([]);
    },
    { auto: true },
  ],
});

/** For a test that holds the program to a time: it runs while no other does, `test(title, ALONE, …)`. */
export const ALONE = { tag: '@alone' };

export { expect };
