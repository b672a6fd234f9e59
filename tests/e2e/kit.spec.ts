import { expect, expectAccessible, test } from './harness';

const kitOf = (reference: string) => `/cases/case_${reference.toLowerCase()}/kit`;

test('a kit that is ready says so at once, names what to take, and shows each chain link by link', async ({
  page,
}) => {
  await page.goto(kitOf('LM-26-2HXD'));
  await expect(page.getByRole('heading', { name: 'Ready', level: 2 })).toBeVisible();
  const take = page.getByRole('list', { name: 'Trays and packs to take' });
  await expect(take.getByText('Open', { exact: true }).first()).toBeVisible();
  await expect(take.getByText('Use-by').first()).toBeVisible();
  await expect(page.getByRole('link', { name: 'Pick list' })).toHaveAttribute('href', /\/pick-list$/);
  await expect(page.getByRole('link', { name: 'Lay-up card' })).toHaveAttribute('href', /\/lay-up-card$/);

  // the first chain that drills: sleeve, bit and what turns it, with the answer between each two
  const needs = page.locator('#needs');
  await needs.locator('summary', { hasText: 'Drilling' }).first().click();
  const chain = needs.getByRole('list', { name: 'The chain, link by link' }).first();
  await expect(chain.getByText('pilot bit', { exact: true })).toBeVisible();
  await expect(chain.getByText('bit or wire through sleeve')).toBeVisible();
  const reasons = needs.getByRole('list', { name: 'Answers for Drilling' }).first();
  await expect(reasons.getByText('Passes', { exact: true })).toBeVisible();
  await expect(reasons.getByText(/ISO 5835/).first()).toBeVisible();

  // every figure opens its working
  for (const label of ['Trays to open', 'Single packs to fetch', 'Steps that can be done', 'Length cover']) {
    await expect(page.getByText(label, { exact: true })).toBeVisible();
  }
  await page.getByText('Show the working').first().click();
  await expect(
    page.getByText('Proven: every choice of fewer trays leaves something short.').first(),
  ).toBeVisible();
  await expect(page.getByText(/At or above the target|Below the target/).first()).toBeVisible();
});

test('a kit that is not ready says why: withdrawn plate, length not stated, short piece, no plan', async ({
  page,
}) => {
  await page.goto(kitOf('LM-26-G7VB'));
  await expect(page.getByRole('heading', { name: 'The plan can’t be built as it is stated' })).toBeVisible();
  await expect(page.getByText(/is withdrawn: it is part of no kit/)).toBeVisible();

  await page.goto(kitOf('LM-26-P3KA'));
  await expect(page.getByRole('heading', { name: 'Not established', level: 2 })).toBeVisible();
  await expect(page.getByText(/the plan does not say how long the screw is/).first()).toBeVisible();

  await page.goto(kitOf('LM-26-8PZE'));
  await expect(page.getByRole('heading', { name: /^Short: / })).toBeVisible();
  await expect(
    page.getByRole('list', { name: 'Shortages' }).getByText('Short', { exact: true }).first(),
  ).toBeVisible();

  await page.goto(kitOf('LM-26-S8HU'));
  await expect(page.getByText('There is no plan to make a kit from')).toBeVisible();
  await expect(page.getByRole('link', { name: 'Plan this case' })).toBeVisible();
});

test('the planner’s question is answered without saving, and refused with every path when it is wrong', async ({
  request,
  baseURL,
}) => {
  const address = `${baseURL}/api/v1/cases/case_lm-26-2hxd/kit-preview`;
  const empty = {
    region: 'ankle',
    limb: 'right',
    bone: 'normal',
    plates: [],
    freeScrews: [
      {
        key: 'L1',
        screwFamily: 'no such family',
        cortices: 2,
        length: { kind: 'exact', mm: 30 },
        acceptLongerMm: 0,
        washerItemId: null,
      },
    ],
    sharedLengthSdMm: null,
    note: null,
  };
  const answered = await request.post(address, { data: empty });
  expect(answered.status()).toBe(200);
  expect(await answered.json()).toMatchObject({
    tone: 'stop',
    word: 'The plan can’t be built as it is stated',
    open: [],
  });

  const wrong = await request.post(address, { data: { ...empty, limb: 'both', plates: [{ key: 'X' }] } });
  expect(wrong.status()).toBe(422);
  const { errors } = (await wrong.json()) as { errors: { pointer?: string }[] };
  expect(errors.length).toBeGreaterThan(2);

  const broken = await request.post(address, {
    data: Buffer.from('{"region":'),
    headers: { 'content-type': 'application/json' },
  });
  expect(broken.status()).toBe(400);
  const unknown = await request.post(`${baseURL}/api/v1/cases/case_none/kit-preview`, { data: empty });
  expect(unknown.status()).toBe(404);
});

test('the question behind the trays can be asked again from outside, with the same answer', async ({
  request,
  page,
  baseURL,
}) => {
  await page.goto(kitOf('LM-26-2HXD'));
  const toTake = page.getByRole('list', { name: 'Trays and packs to take' });
  // the kit comes after the head of its page
  await expect(toTake).toBeVisible();
  const trays = await toTake.getByText('Open', { exact: true }).count();
  const input = await request.get(`${baseURL}/api/v1/cases/case_lm-26-2hxd/kit-working/fewest-trays`);
  const asked = await request.post(`${baseURL}/api/v1/calculations/fewest-trays`, {
    data: await input.json(),
  });
  expect(asked.status()).toBe(200);
  expect(await asked.json()).toMatchObject({ answer: { trays, proof: { kind: 'optimal' } } });
});

test('the shelves are found by item and narrowed to what is past use-by', async ({ page }) => {
  await page.goto('/stock?view=lots');
  await expect(page.getByRole('heading', { name: 'Stock', level: 1 })).toBeVisible();
  await page.getByLabel('Show', { exact: true }).selectOption('past');
  await expect(page.getByRole('table').getByText('past use-by').first()).toBeVisible();
  await expect(page.getByRole('table').getByText('good', { exact: true })).toHaveCount(0);
});

for (const [name, path] of [
  ['a kit that is ready', kitOf('LM-26-2HXD')],
  ['a kit that is short', kitOf('LM-26-8PZE')],
] as const) {
  test(`${name} is accessible, with everything opened`, async ({ page }) => {
    await page.goto(path);
    // what streams in later has to be there before anything is opened
    await page.waitForLoadState('networkidle');
    await page.locator('main details').evaluateAll((all) => {
      for (const one of all) (one as HTMLDetailsElement).open = true;
    });
    await expectAccessible(page);
  });
}
