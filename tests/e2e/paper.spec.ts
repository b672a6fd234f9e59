import { expect, expectAccessible, test } from './harness';

test.describe('sheets on paper', () => {
  for (const path of [
    '/sets/set_sfs-01/count-sheet',
    '/cases/case_lm-26-5glm/pick-list',
    '/cases/case_lm-26-5glm/lay-up-card',
  ]) {
    test(`${path} is a PDF that opens in the browser, has a name, and is kept by nobody`, async ({
      request,
    }) => {
      const answer = await request.get(path);
      expect(answer.status()).toBe(200);
      const headers = answer.headers();
      expect(headers['content-type']).toBe('application/pdf');
      expect(headers['content-disposition']).toMatch(
        /^inline; filename="[a-z-]+-[A-Z0-9-]+-\d{8}T\d{4}Z\.pdf"$/,
      );
      expect(headers['cache-control']).toBe('no-store');
      const body = await answer.body();
      expect(body.subarray(0, 8).toString()).toBe('%PDF-1.7');
      const [a4, letter] = [
        mediaBox(body),
        mediaBox(await (await request.get(`${path}?paper=letter`)).body()),
      ];
      // ISO 216 and ANSI/ASME Y14.1, in points
      expect(a4.map(Math.round)).toEqual([595, 842]);
      expect(letter.map(Math.round)).toEqual([612, 792]);
    });
  }

  test('a page for people where there is nothing to print, with the way out', async ({ page, problems }) => {
    problems.expect(/404|409/);
    const noSet = await page.goto('/sets/set_none/count-sheet');
    expect(noSet?.status()).toBe(404);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('No such set');
    await expect(page.getByRole('link', { name: 'Go to the sets' })).toHaveAttribute('href', '/sets');
    await expectAccessible(page);

    const noCase = await page.goto('/cases/case_none/lay-up-card');
    expect(noCase?.status()).toBe(404);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('No such case');

    const noPlan = await page.goto('/cases/case_lm-26-s8hu/pick-list');
    expect(noPlan?.status()).toBe(409);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Nothing is planned for LM-26-S8HU yet');
    await page.getByRole('link', { name: 'Plan this case' }).click();
    await expect(page).toHaveURL(/\/cases\/case_lm-26-s8hu\/plan$/);
  });

  test('from a case to its pick list', async ({ page }) => {
    await page.goto('/cases/case_lm-26-5glm');
    await expect(page.getByRole('link', { name: 'Pick list' })).toHaveAttribute(
      'href',
      '/cases/case_lm-26-5glm/pick-list',
    );
  });
});

/** Width and height of the first page. */
function mediaBox(pdf: Buffer): number[] {
  const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf.toString('latin1')) ?? [];
  return [Number(width), Number(height)];
}
