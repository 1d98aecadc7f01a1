import ICAL from 'ical.js';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '../helpers/browser';

let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});

afterEach(async () => {
  await Promise.all(browser.contexts().map((context) => context.close()));
});

afterAll(() => browser.close());

test('a telephone fetches its owner’s diary by an address, until that is withdrawn', async () => {
  const page = await openPage(browser);
  await signInAs(page, 'maker');
  await page.goto('/diary/calendar');
  await page.getByLabel('Where it will be used').fill('telephone of this test');
  await page.getByRole('button', { name: 'Make the address' }).click();
  const address = await page.getByLabel('The address, to subscribe to in a calendar').inputValue();
  await noAxeViolations(page);

  // Asked as a telephone does: by nobody who is signed in.
  const answer = await fetch(address);
  expect(answer.status).toBe(200);
  expect(answer.headers.get('content-type')).toBe('text/calendar; charset=utf-8');
  expect(answer.headers.get('cache-control')).toBe('no-store');
  const calendar = ICAL.Component.fromString(await answer.text());
  expect(calendar.getAllSubcomponents('vtimezone')).toHaveLength(1);

  await page.reload();
  expect(await page.getByLabel('The address, to subscribe to in a calendar').count()).toBe(0);
  const form = page.getByRole('form', { name: /telephone of this test/ });
  await form.getByRole('button', { name: 'Withdraw it' }).click();
  await page.getByText('telephone of this test: withdrawn').waitFor();
  const after = await fetch(address);
  expect([after.status, await after.text()]).toEqual([404, '']);
});

test('a wall of tiles is laid out by touch, kept, and printed for whoever sets it', async () => {
  const page = await openPage(browser);
  await signInAs(page, 'maker');
  await page.goto('/tiles-on-wall/new');
  await page.getByText('Touch a tile to set a relief there').waitFor();
  await page.getByLabel('Width to be tiled').fill('100 in');
  await page.getByLabel('Name of what is put where you touch').fill('Heron');

  const wall = page.locator('svg[data-touched]');
  const box = await wall.boundingBox();
  if (!box) throw new Error('The wall is not drawn.');
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  await page.getByText(/^1: Heron, column \d+, row 2$/).waitFor();

  await page.getByLabel('Width to be tiled').fill('wide');
  await page.getByText('Look at what is marked').waitFor();
  expect(await page.getByRole('button', { name: 'Keep it' }).isDisabled()).toBe(true);
  await page.getByLabel('Width to be tiled').fill('100 in');
  await page.getByLabel('Name of the wall').fill('Kitchen, behind the range');
  await noAxeViolations(page);
  await page.getByRole('button', { name: 'Keep it' }).click();

  await page.waitForURL(/\/tiles-on-wall\/\d+\?done=kept$/);
  await page.getByText('The wall is kept.').waitFor();
  await noAxeViolations(page);
  const href = await page
    .getByRole('link', { name: 'Print it for the setter' })
    .getAttribute('href');
  const paper = await page.request.get(href ?? '');
  expect([paper.status(), paper.headers()['content-type']]).toEqual([200, 'application/pdf']);
});
