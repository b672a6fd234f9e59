import { actAs, expect, expectAccessible, setScreen, test } from './harness';
import { bookCase, choosePlate, dayFromNow, holeOf, SURGEON } from './planning';

test.beforeEach(async ({ page }) => {
  await actAs(page, SURGEON);
});

test('the fracture zone is drawn, typed and moved by keys', async ({ page }) => {
  await bookCase(page, { day: dayFromNow(45) });
  await choosePlate(page, 'CR-P35-N-08');
  await page.getByRole('button', { name: 'Mark the zone on the drawing' }).click();
  const board = page.getByRole('group', { name: /drawn to scale/ });
  const box = await board.boundingBox();
  if (!box) throw new Error('the drawing is not on the page');
  await page.mouse.move(box.x + box.width * 0.45, box.y + box.height * 0.5);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.55, box.y + box.height * 0.5, { steps: 5 });
  await page.mouse.up();
  const from = page.getByLabel('Fracture zone from');
  await expect(from).not.toHaveValue('');
  await from.fill('40');
  await page.getByLabel('to', { exact: true }).fill('52');
  const end = page.getByRole('slider', { name: 'Fracture zone ends' });
  await end.focus();
  await page.keyboard.press('ArrowRight');
  await expect(end).toHaveAttribute('aria-valuenow', '53');
  await expect(page.getByLabel('to', { exact: true })).toHaveValue('53');
});

test('the API refuses bad plans with every path, and unknown ids', async ({ page }) => {
  await actAs(page, SURGEON);
  const { request } = page;
  const headers = { 'Content-Type': 'application/json' };
  const malformed = await request.put('/api/v1/plans/plan_nobody', {
    headers,
    data: Buffer.from('{"revision": '),
  });
  expect(malformed.status()).toBe(400);
  expect(malformed.headers()['content-type']).toContain('application/problem+json');

  const bad = {
    caseId: 'case_lm-26-u9dx',
    construct: {
      region: 'moon',
      limb: 'up',
      bone: 'normal',
      plates: 'none',
      freeScrews: [],
      sharedLengthSdMm: -1,
      note: 'x'.repeat(10_000),
    },
  };
  const refused = await request.post('/api/v1/plans', { headers, data: bad });
  expect(refused.status()).toBe(422);
  const paths = ((await refused.json()) as { errors: { pointer: string }[] }).errors
    .map(({ pointer }) => pointer)
    .sort();
  expect(paths).toEqual(['/limb', '/note', '/plates', '/region', '/sharedLengthSdMm']);

  expect((await request.get('/cases/case_nobody')).status()).toBe(404);
  expect((await request.get('/cases/case_nobody/plan')).status()).toBe(404);
  expect(
    (await request.post('/api/v1/plans/plan_nobody/confirm', { headers, data: { revision: 1 } })).status(),
  ).toBe(404);
});

test('the planner is readable by everyone on a tablet, and with a hole chosen', async ({ page }) => {
  await page.goto('/cases/case_lm-26-p3ka/plan');
  await expectAccessible(page, { screens: ['tablet'] });
  await setScreen(page, 'desk');
  await holeOf(page, 'S3').click();
  await expectAccessible(page);
});
