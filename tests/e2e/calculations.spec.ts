import { expect, expectAccessible, test } from './harness';

const list = '/calculations';
const cover = '/calculations/length-cover';

test('every calculation is listed with its question and leads to its own page', async ({ page, request }) => {
  const { calculations } = await (await request.get('/api/v1/calculations')).json();
  await page.goto(list);
  for (const { title, question } of calculations) {
    await expect(page.getByRole('link', { name: title, exact: true })).toBeVisible();
    await expect(page.getByText(question)).toBeVisible();
  }
});

test('varying an input changes the figure at once, and the address repeats it', async ({ page }) => {
  await page.goto(cover);
  // L2 of the worked examples: four holes 20 ± 2 mm, 18:1 20:2 22:1, 2 mm longer accepted: 0.43296
  await expect(page.getByText('43.2', { exact: false }).first()).toBeVisible();
  // the same without longer pieces: 0.10282
  for (const hole of [0, 1, 2, 3]) await page.locator(`#field-holes-${hole}-acceptLongerMm`).fill('0');
  await expect(page.getByText('10.2', { exact: false }).first()).toBeVisible();
  await expect(page).toHaveURL(/input=/);
  const address = page.url();
  await page.goto(list);
  await page.goto(address);
  await expect(page.locator('#field-holes-0-acceptLongerMm')).toHaveValue('0');
  await expect(page.getByText('10.2', { exact: false }).first()).toBeVisible();
  // pressed again if the page was not yet live when it was pressed
  await expect(async () => {
    await page.getByRole('button', { name: 'Back to the example' }).click();
    await expect(page.locator('#field-holes-0-acceptLongerMm')).toHaveValue('2', { timeout: 1000 });
  }).toPass();
});

test('what is wrong is said beside its field and above the form, and nothing is lost', async ({
  page,
  problems,
}) => {
  problems.expect(/422/);
  await page.goto(cover);
  const mean = page.locator('#field-holes-0-need-meanMm');
  await mean.fill('twenty');
  await expect(page.getByRole('main').getByRole('alert')).toContainText('A number is needed.');
  await expect(mean).toHaveAttribute('aria-invalid', 'true');
  await expect(mean).toHaveValue('twenty');
  await page.locator('#field-holes-1-hole').fill('S1');
  await page.locator('#field-holes-2-family').fill('nothing of the kind');
  await mean.fill('20');
  await expect(page.getByRole('main').getByRole('alert').getByRole('link')).toHaveCount(2);
  await expectAccessible(page);
});

test('a value that is not stated makes the figure not established, and is named', async ({ page }) => {
  await page.goto(cover);
  await page.locator('#field-families-0-lengths-2-stock').fill('');
  await expect(page.getByRole('status').getByText('Not established')).toBeVisible();
  await expect(page.getByText('pieces of cortical 3.5, 18 mm')).toBeVisible();
  await page.locator('#field-holes-0-need-kind').selectOption('notStated');
  await expect(page.getByText('length needed in S1')).toBeVisible();
});

test('rows can be added and taken away, and the whole input edited as JSON', async ({ page }) => {
  await page.goto('/calculations/length-feasibility');
  await expect(page.getByText('A, B and C take only 16 or 18; there are two.')).toBeVisible();
  await page.getByRole('button', { name: 'Remove row 2 of Holes' }).click();
  await expect(page.getByText('3 of 3', { exact: true })).toBeVisible();
  await page.getByRole('tab', { name: 'JSON' }).click();
  const json = page.getByLabel('Input as JSON');
  await json.fill('{ "holes": [, }');
  await expect(page.getByText(/Line 1, column 13/)).toBeVisible();
  await json.fill(
    JSON.stringify({
      holes: [{ hole: 'A', family: 'f', acceptedMm: [16] }],
      families: [{ family: 'f', lengths: [{ lengthMm: 16, stock: 0 }] }],
    }),
  );
  await expect(page.getByText('A takes only 16; there is none.')).toBeVisible();
  await page.getByRole('tab', { name: 'Form' }).click();
  await page.getByRole('button', { name: 'Add a row to Holes' }).click();
  await expect(page.locator('#field-holes-1-hole')).toBeVisible();
});

test('an address whose input was cut says so and shows the example', async ({ page }) => {
  await page.goto(`${cover}?input=%7B%22holes%22%3A%5B`);
  await expect(page.getByText('The input in the address could not be read')).toBeVisible();
  await expect(page.locator('#field-holes-0-hole')).toHaveValue('S1');
});

test('a calculation that does not exist leads back', async ({ page, problems }) => {
  problems.expect(/404/);
  const answer = await page.goto('/calculations/no-such-thing');
  expect(answer?.status()).toBe(404);
});

test('the API answers from outside what the page shows, and refuses with every place', async ({
  request,
}) => {
  const { example } = await (await request.get('/api/v1/calculations/length-cover')).json();
  const good = await request.post('/api/v1/calculations/length-cover', { data: example });
  expect((await good.json()).answer.cover).toBeCloseTo(0.43296, 5);
  const bad = await request.post('/api/v1/calculations/length-cover', { data: { holes: 1, families: 2 } });
  expect(bad.status()).toBe(422);
  expect(bad.headers()['content-type']).toContain('application/problem+json');
  expect((await bad.json()).errors.map(({ pointer }: { pointer: string }) => pointer)).toEqual([
    '/holes',
    '/families',
  ]);
  const long = await request.post('/api/v1/calculations/length-cover', {
    data: ' '.repeat(300_000),
    headers: { 'Content-Type': 'application/json' },
  });
  expect(long.status()).toBe(413);
});

test('a figure of a set opens with the set’s own lines, however many', async ({ page }) => {
  await page.goto('/sets/set_sfs-03');
  await page.getByText('Show the working').first().click();
  await page.getByRole('link', { name: 'Vary this in “completeness”' }).first().click();
  await expect(page).toHaveURL(/\/calculations\/completeness\?of=set_sfs-03$/);
  await expect(page.getByText('205 of 210').or(page.getByText('205 ÷ 210')).first()).toBeVisible();

  await page.goto('/calculations/completeness?of=set_nowhere');
  await expect(page.getByText(/The example is shown instead/)).toBeVisible();
});
