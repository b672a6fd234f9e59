import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import type { AxeResults, RunOptions } from 'axe-core';
import { expect, expectAccessible, SCREENS, setScreen, setTheme, test } from './harness';
import { runAxe } from './harness/axe';
import { markContrastSample } from './harness/contrast-sample';

const CONTRAST: RunOptions = { runOnly: { type: 'rule', values: ['color-contrast'] } };

/** The check that every screen is held to, held to account itself: each fault is put on a page that had none, and found. */

/** Text of 16 px, 4.5:1 against what it lies on (WCAG 2.2, 1.4.3): #767676 on white is 4.54:1, #777777 is 4.48:1. */
const STYLE = `
  :root { --ink: #222; --ground: #fff; --quiet: #666; }
  :root[data-theme='dark'] { --ink: #eee; --ground: #111; --quiet: #aaa; }
  body { margin: 0; font: 16px sans-serif; color: var(--ink); background: var(--ground); }
  a { color: var(--ink); }
  button { padding: 12px; font: inherit; color: var(--ink); background: var(--ground); }
`;

/** Many rows alike, so that one that differs is one of many. */
const rows = (odd = '') =>
  `<table><caption>Rows</caption><tbody>${Array.from(
    { length: 60 },
    (_, at) => `<tr><th scope="row">Row ${at}</th><td>${at === 37 && odd ? odd : `text ${at}`}</td></tr>`,
  ).join('')}</tbody></table>`;

const show = (page: Page, { style = '', body = '' }: { style?: string; body?: string }) =>
  page.setContent(
    `<!doctype html><html lang="en-GB" data-theme="light"><head><title>A page</title>
     <meta name="viewport" content="width=device-width"><style>${STYLE}${style}</style></head>
     <body><main><h1>A page</h1>${body || rows()}<p>Read <a href="#there">this</a> before anything else is done here.</p></main></body></html>`,
  );

const verdict = (page: Page): Promise<string> =>
  expectAccessible(page).then(
    () => 'accessible',
    (error: Error) => error.message,
  );

test('a page without faults passes, and the window is as wide as before', async ({ page }) => {
  await show(page, {});
  expect(await verdict(page)).toBe('accessible');
  expect(page.viewportSize()).toEqual(SCREENS.desk);
});

test('too little contrast is found in either theme, at either width, and in one of many cells', async ({
  page,
}) => {
  const quiet = rows('<span id="odd">the odd one</span>');
  const cases: [string, string, RegExp][] = [
    ['#odd { color: #777; }', quiet, /desk, light[\s\S]*color-contrast[\s\S]*#odd/],
    [
      '#odd { color: var(--quiet); } :root[data-theme=dark] { --quiet: #555; }',
      quiet,
      /desk, dark[\s\S]*color-contrast[\s\S]*#odd/,
    ],
    [
      '@media (max-width: 400px) { [data-theme=dark] #odd { color: #555; } }',
      quiet,
      /narrowest, dark[\s\S]*color-contrast[\s\S]*#odd/,
    ],
    // the same letters as all others, on another ground
    ['tr:nth-child(38) { background: #444; }', quiet, /desk, light[\s\S]*color-contrast[\s\S]*#odd/],
    // a bar that does not hold the text but lies behind it
    [
      'td { position: relative; } .bar { position: absolute; inset: 0; background: #333; } .bar + span { position: relative; }',
      rows('<span class="bar"></span><span id="odd">the odd one</span>'),
      /desk, light[\s\S]*color-contrast[\s\S]*#odd/,
    ],
    // a link told from its text by its colour alone, in the dark
    [
      'p { color: var(--ink); } p a { color: #e8e8e8; text-decoration: none; } :root[data-theme=light] p a { color: #222; text-decoration: underline; }',
      '',
      /desk, dark[\s\S]*link-in-text-block/,
    ],
  ];
  for (const [style, body, found] of cases) {
    await show(page, { style, body });
    expect(await verdict(page)).toMatch(found);
  }
});

test('#767676 on white is enough and #777777 is not', async ({ page }) => {
  await show(page, { style: '#odd { color: #767676; }', body: rows('<span id="odd">odd</span>') });
  // in the dark the same grey on #111 has 4.16:1
  expect(await verdict(page)).toMatch(/desk, dark/);
  await show(page, {
    style: '#odd { color: #767676; } [data-theme=dark] #odd { color: #aaa; }',
    body: rows('<span id="odd">odd</span>'),
  });
  expect(await verdict(page)).toBe('accessible');
});

test('what is no matter of colour is found: a target too small when narrow, a missing label, a page too wide', async ({
  page,
}) => {
  const near = '<button class="near">A</button><button class="near">B</button>';
  await show(page, {
    style:
      '@media (max-width: 400px) { .near { padding: 0; border: 0; width: 18px; height: 18px; font-size: 10px; } }',
    body: near,
  });
  expect(await verdict(page)).toMatch(/narrowest, light[\s\S]*target-size/);
  await show(page, { body: '<input type="text">' });
  expect(await verdict(page)).toMatch(/desk, light[\s\S]*label: /);
  await show(page, {
    style: '.only-narrow { display: none; } @media (max-width: 400px) { .only-narrow { display: block; } }',
    body: '<div class="only-narrow"><input type="text"></div>',
  });
  expect(await verdict(page)).toMatch(/narrowest, light[\s\S]*label: /);
  await show(page, { style: 'h1 { width: 500px; }' });
  expect(await verdict(page)).toMatch(/page width[\s\S]*narrowest/);
});

test('the page is asked again after it changed, and after it was loaded anew', async ({ page }) => {
  await show(page, {});
  expect(await verdict(page)).toBe('accessible');
  await page.evaluate(() => document.querySelector('main')?.insertAdjacentHTML('beforeend', '<input>'));
  expect(await verdict(page)).toMatch(/label: /);
  await page.goto('/no-sheet.css');
  await show(page, { body: '<img>' });
  expect(await verdict(page)).toMatch(/image-alt/);
});

/** What axe measured of each text: both colours, size and weight. */
function pairs({ passes, violations, incomplete }: AxeResults): string[] {
  const measured = [...passes, ...violations, ...incomplete].flatMap(({ nodes }) =>
    nodes.flatMap(({ any }) => any.map(({ data }) => data)),
  );
  const told = measured.map((data) =>
    data?.fgColor ? [data.fgColor, data.bgColor, data.fontSize, data.fontWeight].join(' ') : '',
  );
  return [...new Set(told)].filter(Boolean);
}

/** A form, a board, lists, the chains of a kit, and tables that fill up. */
for (const address of ['/settings/kits', '/work/board', '/loads', '/cases/case_lm-26-8pze/kit', '/scan']) {
  test(`at ${address} the sample of texts has every pair of colours that axe finds on the whole page`, async ({
    page,
  }) => {
    await page.goto(address);
    await page.waitForLoadState('networkidle');
    for (const screen of ['desk', 'narrowest'] as const) {
      await setScreen(page, screen);
      await setTheme(page, 'dark');
      // the whole page by the builder of axe's own makers
      const whole = pairs(await new AxeBuilder({ page }).withRules(['color-contrast']).analyze());
      await markContrastSample(page);
      const sampled = pairs(await runAxe(page, CONTRAST));
      expect(whole.length).toBeGreaterThan(5);
      expect(whole.filter((pair) => !sampled.includes(pair))).toEqual([]);
    }
  });
}
