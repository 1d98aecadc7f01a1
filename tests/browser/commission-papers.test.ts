import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '../helpers/browser';

let browser: Browser;
let owner: Page;

beforeAll(async () => {
  browser = await openBrowser();
  owner = await openPage(browser, { width: 390, height: 844 });
  await signInAs(owner, 'owner');
});

afterAll(() => browser.close());

/** Asks for a paper with the cookies of whoever is signed in. */
async function paperAt(href: string | null): Promise<string> {
  if (href === null) throw new Error('It leads somewhere.');
  const answer = await owner.request.get(href);
  const type = answer.headers()['content-type'] ?? '';
  return `${answer.status()} ${type}`;
}

async function sheetOf(title: string): Promise<string> {
  await owner.goto(`/commissions?find=${encodeURIComponent(title)}`);
  const href = await owner.getByRole('link', { name: title }).first().getAttribute('href');
  if (href === null) throw new Error(`${title} is in the demo.`);
  return href;
}

test('the list says what is over its day, and all of them are drawn in time', async () => {
  await owner.goto('/commissions');
  await owner
    .getByText(/days over, due on/)
    .first()
    .waitFor();
  await owner.getByRole('link', { name: 'In time' }).click();
  await owner.getByRole('heading', { name: 'Commissions in time' }).waitFor();
  const drawn = owner.getByRole('region', { name: 'Drawn in time' });
  const lanes = await drawn.getByRole('listitem').count();
  const rows = await owner.getByRole('table').getByRole('row').count();
  expect(lanes).toBeGreaterThan(5);
  expect(rows).toBe(lanes + 1);
  await noAxeViolations(owner);
});

test('the evidence says that every mark fits, and is one file', async () => {
  const sheet = await sheetOf('Cedars at the ford');
  await owner.goto(`${sheet}/evidence`);
  await owner.getByText(/marks were computed anew and fit/).waitFor();
  await owner.getByText(/Fired, part 14, the left trunk/).waitFor();
  await noAxeViolations(owner);
  const link = owner.getByRole('link', { name: 'All of it as one PDF' });
  expect(await paperAt(await link.getAttribute('href'))).toBe('200 application/pdf');
});

test('a certificate that cannot be is marked and keeps what was typed; then it is a paper', async () => {
  const sheet = await sheetOf('Salmonberry hedge');
  await owner.goto(`${sheet}/certificate`);
  await owner.getByLabel('Title').fill(' ');
  await owner.getByLabel('Year it was finished').fill('27');
  await owner.getByLabel('First owner').fill('Ines Oyelaran');
  await owner.getByRole('button', { name: 'Make the certificate' }).click();
  await owner.getByText('Write the title of the piece.').waitFor();
  await owner.getByText('A year of four figures').waitFor();
  expect(await owner.getByLabel('First owner').inputValue()).toBe('Ines Oyelaran');
  await noAxeViolations(owner);
  await owner.getByLabel('Title').fill('Salmonberry hedge');
  await owner.getByLabel('Year it was finished').fill('2026');
  await owner.getByRole('button', { name: 'Make the certificate' }).click();
  const link = owner.getByRole('link', { name: 'Open it as a PDF' });
  await link.waitFor();
  expect(await paperAt(await link.getAttribute('href'))).toBe('200 application/pdf');
  expect(await paperAt(`${sheet}/care/pdf`)).toBe('200 application/pdf');
  expect(await paperAt(`${sheet}/certificate/pdf`)).toMatch(/^404/);
});

test('a number of an edition has a certificate; one that has not come has none', async () => {
  const piece = '/stock/HERON-E50';
  await owner.goto(`${piece}/certificate`);
  await owner.getByLabel('Number').selectOption({ index: 0 });
  await owner.getByRole('button', { name: 'Make the certificate' }).click();
  const link = owner.getByRole('link', { name: 'Open it as a PDF' });
  const href = (await link.getAttribute('href')) ?? '';
  expect(await paperAt(href)).toBe('200 application/pdf');
  expect(await paperAt(href.replace(/number=\d+/, 'number=999'))).toMatch(/^404/);
  expect(await paperAt(`${piece}/care/pdf`)).toBe('200 application/pdf');
  await noAxeViolations(owner);
});
