import type { BrowserContext, Page } from '@playwright/test';

/** Everything that goes wrong on a page without the page saying so. */
export interface PageProblems {
  /** From now on, problems whose text matches are part of the test, e.g. `problems.expect(/409/)`. */
  expect(pattern: RegExp): void;
  /** Those that no pattern matches. */
  unexpected(): string[];
}

/** Begins what is told of the content policy; no pattern of a test takes it away. */
const POLICY = 'content policy: ';

/**
 * Watches every page of a browser window for what the content policy of its answers kept it from: each is a fault, either of
 * the page or of the policy.
 */
async function watchPolicy(context: BrowserContext, found: string[]): Promise<void> {
  context.on('console', (message) => {
    const text = message.text();
    if (text.startsWith(POLICY)) found.push(text);
    else if (message.type() === 'error' && /content security policy/i.test(text)) found.push(POLICY + text);
  });
  await context.addInitScript((mark) => {
    addEventListener('securitypolicyviolation', (event) => {
      const { effectiveDirective, blockedURI, sourceFile, lineNumber, sample, documentURI } = event;
      console.info(
        `${mark}${effectiveDirective} kept ${blockedURI} from ${documentURI} (${sourceFile}:${lineNumber}) ${sample}`,
      );
    });
  }, POLICY);
}

/**
 * Watches a page for console errors, exceptions, failed requests, server errors and requests to other machines.
 * @param home the address of the server under test
 */
export async function watchPage(page: Page, home: string): Promise<PageProblems> {
  const found: string[] = [];
  const expected: RegExp[] = [];
  await watchPolicy(page.context(), found);
  page.on('console', (message) => {
    if (message.type() === 'error') found.push(`console: ${message.text()} (${message.location().url})`);
  });
  page.on('pageerror', (error) => found.push(`exception: ${error.stack ?? error.message}`));
  page.on('requestfailed', (request) => {
    const reason = request.failure()?.errorText ?? '';
    // leaving a page cuts off what it was still fetching ahead
    if (reason !== 'net::ERR_ABORTED') found.push(`request failed: ${request.url()} ${reason}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 500) found.push(`answer ${response.status()}: ${response.url()}`);
  });
  page.on('request', (request) => {
    const url = new URL(request.url());
    const own = url.origin === new URL(home).origin || ['data:', 'blob:', 'about:'].includes(url.protocol);
    if (!own) found.push(`request to another machine: ${request.url()}`);
  });
  return {
    expect: (pattern) => {
      expected.push(pattern);
    },
    unexpected: () =>
      found.filter((text) => text.startsWith(POLICY) || !expected.some((pattern) => pattern.test(text))),
  };
}
