import type { Locator, Page } from '@playwright/test';
import Sqlite from 'better-sqlite3';
import { ALONE, actAs, expect, expectAccessible, test } from './harness';

/** A tablet held upright in one hand. */
test.use({ viewport: { width: 820, height: 1180 }, hasTouch: true });

/** The least side of anything that is pressed here, in CSS pixels: gloves (WCAG 2.2 asks for 24, 2.5.5 for 44). */
const LEAST_SIDE = 48;
const MOST_PRESSES = 11;

/** Presses with a finger, counts it, and sees to it that the target is large enough. */
function presses() {
  let made = 0;
  return {
    get made() {
      return made;
    },
    async press(target: Locator) {
      // how long all of it takes is asked at its end
      await expect(target).toBeVisible({ timeout: 30_000 });
      const box = await target.boundingBox();
      expect(Math.min(box?.width ?? 0, box?.height ?? 0), `${target}`).toBeGreaterThanOrEqual(LEAST_SIDE);
      await target.tap();
      made += 1;
    },
  };
}

const link = (page: Page, name: string | RegExp) => page.getByRole('main').getByRole('link', { name });
const button = (page: Page, name: string | RegExp) => page.getByRole('main').getByRole('button', { name });

test(
  'from any screen to the set in hand: fewer than 12 presses and under a minute',
  ALONE,
  async ({ page, hospital }) => {
    const finger = presses();
    await page.goto('/stock');
    const began = Date.now();
    await finger.press(page.getByRole('banner').getByRole('link', { name: 'Emergency' }));
    await finger.press(link(page, 'Ankle'));
    await expect(page).toHaveURL(/region=ankle/);
    await finger.press(link(page, 'Left'));
    await finger.press(link(page, /Ankle, lag screw and one-third tubular/));
    await finger.press(button(page, '1 hour'));
    await expect(page).toHaveURL(/by=/);
    await finger.press(link(page, /^See what taking/));
    await expect(page.getByRole('heading', { name: 'What it takes from others' })).toBeVisible();
    // who planned it operates, and a theatre that is free is chosen: neither need be said
    await finger.press(button(page, /^Take /));
    await expect(page).toHaveURL(/\/emergency\/case_/);
    const seconds = (Date.now() - began) / 1000;
    test
      .info()
      .annotations.push({ type: 'flow', description: `${finger.made} presses, ${seconds.toFixed(1)} s` });
    expect(finger.made).toBeLessThanOrEqual(MOST_PRESSES);
    expect(seconds).toBeLessThan(60);

    // it is on the list as an emergency, with its sets promised, and its open questions are there
    await expect(page.getByText('2 questions open')).toBeVisible();
    const id = page.url().split('/').at(-1);
    const db = new Sqlite(hospital?.database ?? '', { readonly: true });
    expect(db.prepare('SELECT urgency, limb, region FROM cases WHERE id = ?').get(id)).toEqual({
      urgency: 'now',
      limb: 'left',
      region: 'ankle',
    });
    expect(db.prepare('SELECT chosen_by FROM set_promises WHERE case_id = ?').all(id)).toContainEqual({
      chosen_by: 'person',
    });
    db.close();
  },
);

/** Tomorrow, or the day after, at an hour of the clock on the wall. */
function at(days: number, time: string): string {
  const day = new Date(Date.now() + days * 86_400_000).toLocaleDateString('en-CA', {
    timeZone: 'Europe/London',
  });
  return new Date(`${day}T${time}:00.000Z`).toISOString();
}

test('taking the morning’s set says first which case loses it, and is on record with what that case got', async ({
  page,
  hospital,
}) => {
  await page.goto(`/emergency?region=forearmShaft&side=right&by=${at(1, '04:30')}`);
  await link(page, /Forearm shaft, bridging in poor bone/).tap();
  await expect(page.getByRole('heading', { name: 'Sterile now' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'In process' })).toBeVisible();
  await expect(page.getByText(/half of the time by .* nine in ten by/).first()).toBeVisible();
  // what is short says whether it matters, and a held set has its way out and no key to take it
  await expect(page.getByText('does not matter for this construct').first()).toBeVisible();
  await expect(page.getByText(/Held, because/).first()).toBeVisible();
  await expect(link(page, 'Take SFL-02')).toHaveCount(0);
  await expectAccessible(page, { screens: ['desk', 'narrowest'] });

  await link(page, 'Take SFL-05').first().tap();
  const hit = page
    .getByRole('region', { name: /^What it (takes|took) from others/ })
    .getByRole('listitem')
    .filter({ hasText: 'LM-26-M4VQ' });
  await expect(hit).toContainText('It loses SFL-05');
  await expectAccessible(page);

  // a reload keeps what was answered, and back leads to the question before
  await page.reload();
  await expect(hit).toContainText('It loses SFL-05');
  await page.goBack();
  await expect(page.getByRole('heading', { name: 'What builds it' })).toBeVisible();
  await page.goForward();
  await expect(hit).toContainText('It loses SFL-05');

  await button(page, 'Take SFL-05').tap();
  await expect(page).toHaveURL(/\/emergency\/case_/);
  await expect(hit).toContainText('It loses SFL-05');
  // whoever goes back does not take it twice
  await page.goBack();
  await expect(page.getByRole('heading', { name: 'What builds it' })).toBeVisible();
  await expect(page.getByText(/Taken for another emergency/)).toBeVisible();
  const db = new Sqlite(hospital?.database ?? '', { readonly: true });
  const morning = db
    .prepare(
      "SELECT s.code FROM set_promises p JOIN sets s ON s.id = p.set_id WHERE p.case_id = 'case_lm-26-m4vq'",
    )
    .pluck()
    .all();
  expect(morning).not.toContain('SFL-05');
  db.close();

  await actAs(page, 'person_ines-halloran');
  await page.goto('/notices');
  await expect(page.getByText(/took SFL-05 from your case LM-26-M4VQ/)).toBeVisible();
});

test('a set that has gone already is recorded with both times, and what could not be answered stays open', async ({
  page,
  problems,
}) => {
  // closing the plan before there is one is refused on purpose
  problems.expect(/409/);
  await page.goto('/emergency?region=forearmShaft&side=left&plan=unknown&take=SFL-01');
  await expect(button(page, 'Take SFL-01')).toBeDisabled();
  await expect(page.getByText('Who operates? Press the name above.')).toBeVisible();
  await button(page, 'Callum Denby').tap();
  await button(page, 'It has gone already').tap();
  await button(page, '10 min ago').tap();
  await button(page, /^Record: SFL-01 gone/).tap();
  await expect(page).toHaveURL(/\/emergency\/case_/);
  await expect(
    page.getByText(/gone (today|yesterday) \d\d:\d\d, recorded (today|yesterday) \d\d:\d\d/),
  ).toBeVisible();
  await expect(page.getByText('To be written, and confirmed by a surgeon.')).toBeVisible();
  await expectAccessible(page);

  // nobody closes the plan before there is one
  await button(page, 'The plan is confirmed').tap();
  await expect(page.getByRole('alert').getByText(/is not confirmed/)).toBeVisible();
  await page.goto('/emergency');
  await expect(page.getByText('Still open')).toBeVisible();
});

test('who may not take a set may look', async ({ page }) => {
  await actAs(page, 'person_dilys-harrow');
  await page.goto('/emergency?region=hand&side=left&plan=unknown&take=GEN-02');
  await expect(page.getByText('You can look.')).toBeVisible();
  await expect(button(page, /^Take/)).toHaveCount(0);
});
