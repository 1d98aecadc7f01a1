import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '../helpers/browser';

let browser: Browser;
/** So that this story can be told again in the same gallery. */
const mark = randomUUID().slice(0, 6);

beforeAll(async () => {
  browser = await openBrowser();
});

afterAll(() => browser.close());

/** Adds somebody to the address book; the address of their card. */
async function added(page: Page, name: string, more: Record<string, string>): Promise<string> {
  await page.goto('/collectors/new');
  await page.getByLabel('Name', { exact: true }).fill(name);
  for (const [label, typed] of Object.entries(more)) await page.getByLabel(label).fill(typed);
  await page.getByRole('button', { name: 'Add to the address book' }).click();
  await page.waitForURL((url) => /^\/collectors\/[0-9a-f-]{36}$/.test(url.pathname));
  return new URL(page.url()).pathname;
}

/** Unfolds a small form of the card. */
async function unfold(page: Page, words: string): Promise<void> {
  await page.locator('summary').filter({ hasText: words }).first().click();
}

test('a card fills up; two entries are found to be one, and set apart again', async () => {
  const clerk = await openPage(browser, { width: 1280, height: 900 });
  await signInAs(clerk, 'gallery');
  const name = `Wenna Harrowgate ${mark}`;
  const phone = `555 77${String(parseInt(mark, 16) % 100_000).padStart(5, '0')}`;
  const card = await added(clerk, name, { Telephone: phone, Town: 'Cedar Reach' });

  await unfold(clerk, 'Add somebody');
  const person = clerk.getByRole('form', { name: 'Add somebody' });
  await person.getByLabel('How it is said').fill('WEN-na');
  await person.getByRole('button', { name: 'Add them' }).click();
  await person.getByText('Write the name.').waitFor();
  expect(await person.getByLabel('How it is said').inputValue()).toBe('WEN-na');
  await person.getByLabel('Name', { exact: true }).fill(`Aldith ${mark}`);
  await person.getByRole('button', { name: 'Add them' }).click();
  await clerk.getByText(`Change Aldith ${mark}`).waitFor();

  await unfold(clerk, 'Write a note');
  const note = clerk.getByRole('form', { name: 'Write a note' });
  await note.getByLabel('What is to be remembered').fill('The alarm code is 4471');
  await note.getByRole('button', { name: 'Keep the note' }).click();
  await note.getByText('go on the work order alone').waitFor();
  await note.getByLabel('What is to be remembered').fill(`Loves kelp greens ${mark}`);
  await note.getByRole('button', { name: 'Keep the note' }).click();
  await clerk.getByText(`Loves kelp greens ${mark}`).first().waitFor();

  await clerk.getByText('never asked, so no').first().waitFor();
  await unfold(clerk, 'They said yes or no');
  const consent = clerk.getByRole('form', { name: 'They said yes or no' });
  await consent.getByLabel('To what').selectOption({ label: 'Text messages' });
  await consent.getByText('Yes', { exact: true }).click();
  await consent.getByRole('button', { name: 'Write it down' }).click();
  await clerk.getByText(/yes, .*, in the gallery; .* heard it/).waitFor();
  await noAxeViolations(clerk);

  const other = await added(clerk, `Wenna Harrowgaet ${mark}`, { Telephone: phone });
  await clerk.goto('/collectors/twice');
  const pair = clerk.getByRole('form', { name: new RegExp(`Harrowgate ${mark}.* are one`) });
  await pair.waitFor();
  await noAxeViolations(clerk);
  await pair.getByRole('button', { name: 'They are one' }).click();
  await clerk.waitForURL((url) => url.pathname === card);
  await clerk.getByText('Also in the address book as').waitFor();
  await clerk.goto(other);
  expect(new URL(clerk.url()).pathname).toBe(card);
  await clerk.goto(`/collectors?find=Harrowgaet ${mark}`);
  expect(await clerk.getByRole('link', { name: new RegExp(mark) }).count()).toBe(1);
  await clerk.goto(card);
  await clerk.getByRole('button', { name: 'Set apart again' }).click();
  await clerk.waitForURL((url) => url.pathname === other);
});

test('the owner hands out everything kept of one person, and strikes it out', async () => {
  const owner = await openPage(browser, { width: 390, height: 844 });
  await signInAs(owner, 'owner');
  const name = `Ysolde Marchbank ${mark}`;
  const mail = `ysolde.${mark}@collector.example`;
  const card = await added(owner, name, { Mail: mail });
  await owner.getByRole('link', { name: 'What is kept of them' }).click();
  await owner.waitForURL((url) => url.pathname.endsWith('/privacy'));
  await noAxeViolations(owner);

  const waiting = owner.waitForEvent('download');
  await owner.getByRole('link', { name: 'As a file for a machine' }).click();
  const file = await (await waiting).path();
  const kept = JSON.parse(readFileSync(file, 'utf8')) as { entries: object[] };
  expect(kept.entries).toMatchObject([{ name, email: mail }]);

  await owner.getByLabel(/^Type their name/).fill('Somebody else');
  await owner.getByRole('button', { name: 'Strike out what is known of them' }).click();
  await owner.getByText('That is not the name above.').first().waitFor();
  await owner.getByLabel(/^Type their name/).fill(name);
  await owner.getByRole('button', { name: 'Strike out what is known of them' }).click();
  await owner.waitForURL((url) => url.pathname === card);
  await owner.getByRole('heading', { name: /^Erased collector \d+$/ }).waitFor();
  await noAxeViolations(owner);
  expect(await owner.content()).not.toContain(name);
  await owner.goto(`/collectors?find=Ysolde ${mark}`);
  expect(await owner.getByRole('link', { name: /Ysolde/ }).count()).toBe(0);
  expect((await owner.request.get(`${card}/export`)).status()).toBe(409);

  const clerk = await openPage(browser, { width: 390, height: 844 });
  await signInAs(clerk, 'gallery');
  const answer = await clerk.request.get(`${card}/privacy`, { maxRedirects: 0 });
  expect(answer.status()).not.toBe(200);
});
