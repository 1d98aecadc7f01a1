import sharp from 'sharp';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '@/tests/helpers/browser';

let browser: Browser;
let page: Page;
let here = '';

beforeAll(async () => {
  browser = await openBrowser();
  page = await openPage(browser, { width: 1100, height: 1000 });
  await signInAs(page, 'maker');
});

afterAll(() => browser.close());

const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
const scale = (box: string) => page.getByRole('textbox', { name: box, exact: true });
const follow = (name: string) => page.getByRole('link', { name, exact: true }).first().click();

test('something is sent to a person: boxes are reckoned, changed by hand, weighed', async () => {
  await page.goto('/sending');
  await noAxeViolations(page);
  await follow('Send something');
  await page.getByLabel('To whom').fill('Isolde Marsh');
  await page.getByLabel('Which carrier').fill('Coast Parcels');
  await page.getByLabel('How the carrier reckons').selectOption({ index: 4 });
  await press('Go on to what goes into it');
  await page.getByText('Write where it goes').first().waitFor();
  expect(await page.getByLabel('Which carrier').inputValue()).toBe('Coast Parcels');
  await page.getByLabel('Where to').fill('4 Alder Bluff\nSalal Point, WA');
  await noAxeViolations(page);
  await press('Go on to what goes into it');

  const list = page.getByLabel('What is to go');
  await list.fill('2 × Tern over shoals; large; 6 lb');
  await press('Reckon boxes and crates');
  await page.getByText('its size cannot be read').first().waitFor();
  expect(await list.inputValue()).toContain('large');
  await list.fill('2 × Tern over shoals; 10 × 10 × 1 in; 6 lb\nHeron; 40 × 30 × 3 in; 70 lb');
  await press('Reckon boxes and crates');
  await page.getByRole('heading', { name: '2 boxes' }).waitFor();
  here = new URL(page.url()).pathname;
  await noAxeViolations(page);

  await follow('Change box 2');
  await page.getByLabel('What is in it').fill('Heron; 70 lb\n\nCare sheet');
  await noAxeViolations(page);
  await press('Keep the box');
  await page.getByText('Layer 2').waitFor();
  await scale('Box 1').fill('17.5');
  await scale('Box 2').fill('0');
  await press('Keep the weights');
  await page.getByText('A weight has to be more than zero.').first().waitFor();
  await scale('Box 2').fill('128');
  await press('Keep the weights');
  await page.getByText('The weights are kept.').waitFor();
  await page.getByText('146 lb', { exact: true }).waitFor();
});

test('its papers are printed', async () => {
  for (const paper of ['packing', 'labels', 'receiving']) {
    const pdf = await page.request.get(`${here}/${paper}/pdf`);
    expect(pdf.headers()['content-type']).toBe('application/pdf');
  }
});

test('it leaves, it comes, and how it looked is marked on a picture', async () => {
  await page.goto(`${here}/step/sent`);
  await page.getByLabel('The carrier’s number').fill('CP 77 310');
  await noAxeViolations(page);
  await press('It left');
  await page.getByText('number CP 77 310').waitFor();
  expect(await page.getByRole('link', { name: 'Change box 1' }).count()).toBe(0);
  await follow('It arrived');
  await page.getByLabel('What was remarked').fill('A corner of box 2 is crushed');
  await press('It arrived');
  await page.getByText('Damage must be told by').waitFor();

  await follow('Write how it looks');
  await page.getByLabel('In words').fill('A chip at the lower edge.');
  const shade = { width: 900, height: 600, channels: 3, background: '#7f9c92' } as const;
  const buffer = await sharp({ create: shade }).jpeg().toBuffer();
  const file = { name: 'heron.jpg', mimeType: 'image/jpeg', buffer };
  await page.getByLabel('Pictures').setInputFiles(file);
  await press('Write it down');
  await page.getByText('Set marks on it').click();
  await page.getByLabel('At spot 1').fill('A chip of a quarter inch');
  await press('Keep the marks');
  await page.getByText('Touch the picture where mark 1 belongs.').first().waitFor();
  await page.locator('[data-marking]').click({ position: { x: 90, y: 60 } });
  await press('Keep the marks');
  await page.getByRole('list', { name: 'Marks on picture 1' }).waitFor();
  await noAxeViolations(page);
});

test('what is broken is told, and its file says what is missing', async () => {
  await page.goto(here);
  await follow('Something is broken');
  await page.getByLabel('What is broken').fill('The wing, in box 2.');
  await page.getByLabel('What is asked for it').fill('620');
  await noAxeViolations(page);
  await press('Write it down');
  await page.getByText('How it looked as it left, with pictures: missing').waitFor();
  await noAxeViolations(page);
  await press('Write it down');
  await page.getByText('the carrier was told').waitFor();
  await page.goto('/sending');
  await page.getByText('to be claimed').first().waitFor();
});

test('the whole sheet is read on a phone', async () => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto(here);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(wide).toBeLessThanOrEqual(360);
  await noAxeViolations(page);
});
