import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import type { DemoPerson } from '@/seed/hospital/people';
import { actAs, expect, expectAccessible, test } from './harness';

/**
 * What every screen owes its reader, asked of the build's own list of screens, so that a new one cannot be forgotten:
 * it answers, says what it is, is readable by everyone in both themes and down to 320 px, moves nothing about while it
 * loads, carries no style attribute, and shows the cautions.
 */

/** Ids of the demo for the places of a route; a route with a place that is not here fails. */
const EXAMPLES: Record<string, string[]> = {
  '/api-docs/[operation]': ['/api-docs/postLoansById', '/api-docs/getFhirByType'],
  '/cases/[id]': [
    '/cases/case_lm-26-9rtb',
    '/cases/case_lm-26-u4ht',
    '/cases/case_lm-26-s8hu',
    '/cases/case_lm-26-l4qf',
  ],
  '/cases/[id]/plan': ['/cases/case_lm-26-p3ka/plan', '/cases/case_lm-26-q8bn/plan'],
  '/cases/[id]/kit': ['9rtb', '8pze', 'x3nj', 'f7mr', 'p3ka', 'g7vb', 's8hu', 'q8bn'].map(
    (end) => `/cases/case_lm-26-${end}/kit`,
  ),
  '/cases/[id]/pick': ['9rtb', '3jfa', 'd3xe', 'u4ht', 's8hu'].map((end) => `/cases/case_lm-26-${end}/pick`),
  '/cases/[id]/check': ['/cases/case_lm-26-d3xe/check', '/cases/case_lm-26-9rtb/check'],
  '/cases/[id]/counts': ['/cases/case_lm-26-u4ht/counts', '/cases/case_lm-26-9rtb/counts'],
  '/cases/[id]/use': ['/cases/case_lm-26-u4ht/use', '/cases/case_lm-26-9rtb/use'],
  '/cases/[id]/back': ['/cases/case_lm-26-u4ht/back', '/cases/case_lm-26-9rtb/back'],
  '/catalogue/[id]': ['cr-p35-hs-08', 'sf-c35-16', 'cr-b28-200', 'sf-s-i45', 'pt-r-mini', 'cr-g-small'].map(
    (end) => `/catalogue/item_${end}`,
  ),
  '/exchange/[list]': ['catalogue', 'stock', 'configurations'].map((list) => `/exchange/${list}`),
  '/catalogue/[id]/edit': ['/catalogue/item_cr-p35-k-05/edit'],
  '/fit/rules/[code]': ['/fit/rules/pilot-not-below-core'],
  '/settings/[key]': ['/settings/kits'],
  '/sets/[id]': ['sfs-03', 'sfs-09', 'pht-l4', 'lfl-01', 'sfl-02'].map((end) => `/sets/set_${end}`),
  '/packs/[id]': ['/packs/pack_demo-dfb-03-1'],
  '/sets/[id]/pack': ['/sets/set_clo-02/pack', '/sets/set_sfs-01/pack'],
  '/sets/[id]/short': ['/sets/set_drt-04/short', '/sets/set_sfs-09/short'],
  '/places/[id]': ['/places/place_store-a', '/places/place_pouch-1'],
  '/sets/[id]/history': ['/sets/set_sfl-02/history'],
  '/stock/[item]': ['sf-n40-40', 'cr-b25-110', 'sf-c35-16', 'pt-c-seal'].map((end) => `/stock/item_${end}`),
  '/sets/[id]/count': ['/sets/set_sfs-09/count', '/sets/set_sfs-01/count'],
  '/lenders/[id]': ['/lenders/lender_sallowfen'],
  '/consignment/[id]': ['/consignment/lender_sallowfen', '/consignment/lender_corrow-hill'],
  '/consignment/[id]/reconcile': ['/consignment/lender_sallowfen/reconcile'],
  '/consignment/orders/[id]': ['/consignment/orders/usageOrder_demo-1'],
  '/loads/[id]': ['/loads/load_demo-1460'],
  '/loans/[id]': ['4471', '4472', '4475', '4476', '4477', '4430'].map((end) => `/loans/loan_demo-${end}`),
  '/people/[id]': ['/people/person_wren-adeyemi'],
  '/configurations/[id]': ['/configurations/configuration_sfl'],
  '/configurations/[id]/approve': ['/configurations/configuration_sfl/approve'],
  '/configurations/[id]/edit': ['/configurations/configuration_sfl/edit'],
  '/configurations/[id]/review': [
    '/configurations/configuration_sfl/review',
    '/configurations/configuration_drt/review?months=12',
  ],
  '/configurations/[id]/compare': ['/configurations/configuration_sfl/compare'],
  '/plans/cards/[id]': ['/plans/cards/card_demo-1', '/plans/cards/card_demo-5'],
  '/plans/cards/[id]/compare': ['/plans/cards/card_demo-3/compare?from=1&to=3'],
  '/plans/cards/[id]/edit': ['/plans/cards/card_demo-1/edit'],
  '/plans/starts/[id]': ['/plans/starts/start_demo-1', '/plans/starts/start_demo-4'],
  '/plans/starts/[id]/compare': ['/plans/starts/start_demo-1/compare'],
  '/calculations/[name]': [
    'completeness',
    'buildable',
    'length-feasibility',
    'length-cover',
    'fewest-trays',
    'identifier',
    'plate-remarks',
    'thermal-dose',
    'set-turnaround',
    'loan-notice',
    'set-review',
    'expiry-loss',
    'service-life',
    'case-cost',
    'reorder',
    'trace',
  ].map((name) => `/calculations/${name}`),
};

/** Who looks, where the first technician sees less: fields that may be filled have more to keep than text. */
const LOOKED_AT_BY: Record<string, DemoPerson> = {
  '/cases/import': 'person_gwen-sallis',
  '/recalls/[id]': 'person_nell-ashdown',
  '/trace': 'person_nell-ashdown',
  '/exchange': 'person_edda-winslow',
  '/exchange/[list]': 'person_gwen-sallis',
  '/health': 'person_edda-winslow',
  '/people': 'person_edda-winslow',
  '/people/[id]': 'person_edda-winslow',
  '/people/new': 'person_edda-winslow',
  '/people/tokens': 'person_edda-winslow',
  '/people/workstations': 'person_edda-winslow',
  '/cases': 'person_tobias-wray',
  '/cases/[id]': 'person_tobias-wray',
  '/plans': 'person_tobias-wray',
  '/catalogue/[id]': 'person_dilys-harrow',
  '/ledger': 'person_maurice-oduya',
  '/lenders': 'person_dilys-harrow',
  '/lenders/[id]': 'person_dilys-harrow',
  '/loans': 'person_dilys-harrow',
  '/loans/[id]': 'person_dilys-harrow',
  '/loans/new': 'person_dilys-harrow',
  '/places': 'person_dilys-harrow',
  '/places/[id]': 'person_maurice-oduya',
  '/account/feeds': 'person_edda-winslow',
  '/plans/cards/[id]': 'person_ines-halloran',
  '/plans/cards/[id]/edit': 'person_ines-halloran',
  '/plans/cards/new': 'person_ines-halloran',
  '/plans/procedures': 'person_gwen-sallis',
  '/plans/starts/[id]': 'person_ines-halloran',
  '/repairs': 'person_dilys-harrow',
  '/consignment': 'person_dilys-harrow',
  '/consignment/[id]': 'person_dilys-harrow',
  '/consignment/[id]/reconcile': 'person_dilys-harrow',
  '/consignment/orders/[id]': 'person_gwen-sallis',
  '/consignment/reconciliations/[id]': 'person_dilys-harrow',
  '/restock': 'person_gwen-sallis',
  '/restock/orders/[id]': 'person_gwen-sallis',
  '/restock/terms': 'person_dilys-harrow',
  '/sets/[id]': 'person_maurice-oduya',
  '/stock': 'person_dilys-harrow',
  '/stock/[item]': 'person_maurice-oduya',
  '/stock/counts': 'person_dilys-harrow',
  '/stock/counts/[id]': 'person_dilys-harrow',
  '/stock/receive': 'person_dilys-harrow',
  '/work/board': 'person_maurice-oduya',
  '/cases/new': 'person_tobias-wray',
  '/cases/[id]/plan': 'person_tobias-wray',
  '/cases/[id]/check': 'person_tomas-birkett',
  '/cases/[id]/counts': 'person_ruth-okonjo',
  '/cases/[id]/use': 'person_ruth-okonjo',
  '/catalogue/new': 'person_dilys-harrow',
  '/catalogue/[id]/edit': 'person_dilys-harrow',
  '/configurations/new': 'person_maurice-oduya',
  '/configurations/[id]/approve': 'person_hettie-crane',
  '/configurations/[id]/edit': 'person_maurice-oduya',
  '/fit/exceptions/new': 'person_gwen-sallis',
  '/fit/exceptions/[id]': 'person_gwen-sallis',
  '/fit/rules/new': 'person_gwen-sallis',
  '/fit/rules/[code]': 'person_gwen-sallis',
  '/settings/[key]': 'person_gwen-sallis',
  '/theatre-list/at-risk': 'person_gwen-sallis',
  '/theatre-list': 'person_gwen-sallis',
  '/theatre-list/theatres': 'person_gwen-sallis',
  '/theatre-list/week': 'person_gwen-sallis',
};

/** Routes to things the demo has none of: made as a person would; the answer is where it then stands. */
const MADE: Record<string, (page: Page) => Promise<string>> = {
  // the number of the demo's rejected load depends on the hour at which it was loaded
  '/loads/[id]/touched': async (page) => {
    await page.goto('/loads');
    const rejected = page.getByRole('row').filter({ hasText: 'Rejected' }).first();
    return `${await rejected.getByRole('link').first().getAttribute('href')}/touched`;
  },
  '/restock/orders/[id]': async (page) => {
    await page.goto('/restock');
    await page.getByRole('button', { name: 'Work out what to order' }).click();
    await page.getByRole('button', { name: 'Approve and order' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Approve and order' }).click();
    await page
      .getByRole('link', { name: /^OR-\d{4}, / })
      .first()
      .click();
    await expect(page).toHaveURL(/\/restock\/orders\/order_/);
    return page.url();
  },
  '/consignment/reconciliations/[id]': async (page) => {
    await page.goto('/consignment/lender_sallowfen/reconcile');
    await page.getByRole('radio', { name: 'their list' }).check();
    await page.getByRole('textbox', { name: 'The list' }).fill('code;lot;quantity\nSF-L35-40;L35-8110;3\n');
    await page.getByRole('button', { name: 'Set it beside our record' }).click();
    await expect(page).toHaveURL(/\/consignment\/reconciliations\/reconciliation_/);
    return page.url();
  },
  '/stock/counts/[id]': async (page) => {
    await page.goto('/stock/counts');
    await page.getByRole('button', { name: 'Count all in Consignment cabinet' }).click();
    await expect(page).toHaveURL(/\/stock\/counts\/stockCount_/);
    return page.url();
  },
  '/recalls/[id]': async (page) => {
    await page.goto('/trace/result?of=item&item=item_cr-c35-20');
    await page.getByRole('button', { name: 'Call it back' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByText('A rehearsal').click();
    await dialog.getByLabel('Why').fill('Rehearsed with the theatre team.');
    await dialog.getByRole('button', { name: 'Rehearse it' }).click();
    await expect(page).toHaveURL(/\/recalls\/recall_/);
    return page.url();
  },
  '/emergency/[id]': async (page) => {
    await page.goto('/emergency?region=ankle&side=left&plan=unknown&surgeon=person_callum-denby&take=SFS-02');
    await page.getByRole('button', { name: 'Take SFS-02' }).click();
    await expect(page).toHaveURL(/\/emergency\/case_/);
    return page.url();
  },
  '/fit/exceptions/[id]': async (page) => {
    await page.goto('/fit/exceptions/new?a=CR-S-E35&b=CR-B28-165');
    await page.getByLabel('Relation').selectOption('passes');
    await page.getByText('Deny: they do not fit').click();
    await page.getByLabel('Why, as it is shown').fill('Kept apart since the two were mixed up on the bench.');
    await page.getByLabel('Source').selectOption('localPolicy');
    await page.getByLabel('Owner').fill('Theatre manager');
    await page.getByLabel('Date').fill('2026-11-02');
    await page.getByRole('button', { name: 'Draft the exception' }).click();
    await expect(page).toHaveURL(/\/fit\/exceptions\/exception_/);
    return page.url();
  },
};

/** Screens of the build, from the list it writes of its own routes. */
function screens(): string[] {
  const folder = process.env.KITWRIGHT_DIST ?? '.next';
  const manifest = JSON.parse(
    readFileSync(join(process.cwd(), folder, 'app-path-routes-manifest.json'), 'utf8'),
  ) as Record<string, string>;
  return Object.entries(manifest)
    .filter(([entry, route]) => entry.endsWith('/page') && !route.startsWith('/_'))
    .map(([, route]) => route)
    .sort();
}

// they read what they look at and need nothing of each other: every worker takes a share, on a hospital of its own
test.describe.configure({ mode: 'parallel' });
// what is wrong is named with its place, and each can be looked at again by itself; recording all of them takes long
test.use({ trace: 'off' });

test('every screen of the build has an example here', () => {
  const routes = screens();
  expect(routes.length).toBeGreaterThan(15);
  expect(routes.filter((route) => route.includes('[') && !EXAMPLES[route] && !MADE[route])).toEqual([]);
});

const visits = screens().flatMap((route) =>
  (EXAMPLES[route] ?? [route]).map((address) => ({ route, address })),
);
for (const { route, address } of visits) {
  test(`${address} keeps what every screen owes`, async ({ page }) => {
    const acting = LOOKED_AT_BY[route];
    if (acting) await actAs(page, acting);
    const there = (await MADE[route]?.(page)) ?? address;
    await page.addInitScript(() => {
      const shifts = globalThis as typeof globalThis & { shifted?: number };
      shifts.shifted = 0;
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries() as (PerformanceEntry & {
          value: number;
          hadRecentInput: boolean;
        })[]) {
          if (!entry.hadRecentInput) shifts.shifted = (shifts.shifted ?? 0) + entry.value;
        }
      }).observe({ type: 'layout-shift', buffered: true });
    });
    const answer = await page.goto(there);
    expect(answer?.status()).toBe(200);
    const html = (await answer?.text()) ?? '';
    expect(html.match(/<[^>]+ style="[^"]*"/g) ?? [], 'style attributes in the page as it is sent').toEqual(
      [],
    );
    await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
    await expect(page.getByText('A stock and logistics aid, not a surgical plan')).not.toHaveCount(0);
    await page.waitForLoadState('networkidle');
    const shifted = await page.evaluate(
      () => (globalThis as typeof globalThis & { shifted?: number }).shifted ?? 0,
    );
    // 0.1 is the "good" threshold of Web Vitals; nothing here should come near it
    expect(shifted, 'cumulative layout shift').toBeLessThan(0.02);
    await expectAccessible(page);
  });
}
