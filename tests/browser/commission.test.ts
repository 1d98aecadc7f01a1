import { afterAll, beforeAll, expect, test } from 'vitest';
import sharp from 'sharp';
import type { Browser, Page } from 'playwright-core';
import { noAxeViolations, openBrowser, openPage, signInAs } from '@/tests/helpers/browser';

let browser: Browser;
let maker: Page;
let owner: Page;
let gallery: Page;
let sheet: string;

const title = `Herons for the stair ${Date.now()}`;

beforeAll(async () => {
  browser = await openBrowser();
  [maker, owner, gallery] = [
    await openPage(browser, { width: 390, height: 844 }),
    await openPage(browser),
    await openPage(browser, { width: 820, height: 1180 }),
  ];
  await signInAs(maker, 'maker');
  await signInAs(owner, 'owner');
  await signInAs(gallery, 'gallery');
});

afterAll(() => browser.close());

async function aPhoto(shade: number) {
  const background = { r: 180, g: shade, b: 150 };
  const buffer = await sharp({ create: { width: 900, height: 600, channels: 3, background } })
    .jpeg()
    .toBuffer();
  return { name: 'photo.jpg', mimeType: 'image/jpeg', buffer };
}

async function nextSentence(page: Page): Promise<string> {
  await page.goto(sheet);
  return (await page.getByRole('region', { name: 'What is next' }).innerText()).trim();
}

test('a maker writes a request down on a telephone, with what they were told and no more', async () => {
  await maker.goto('/commissions');
  await maker.getByRole('link', { name: 'Open a commission' }).first().click();
  await maker.getByLabel('A title to find it by').fill(title);
  await maker.getByLabel('Which room, which wall').fill('Stair hall, the long wall');
  await maker.getByLabel('Height').fill('36');
  await maker.getByLabel('Width').fill('five foot');
  await maker.getByLabel('Pictures').setInputFiles([await aPhoto(90), await aPhoto(120)]);
  await maker.getByRole('button', { name: 'Write the request down' }).click();

  await maker.getByText('Choose who asks for it, or write the name of someone new.').waitFor();
  await maker.getByText('That does not read as a length.').waitFor();
  expect(await maker.getByLabel('A title to find it by').inputValue()).toBe(title);

  await maker.getByLabel('Their name').fill('Marit Oland');
  await maker.getByLabel('Width').fill('60');
  await maker.getByRole('button', { name: 'Write the request down' }).click();
  await maker.waitForURL(/\/commissions\/\d+\?done=logged/);
  sheet = new URL(maker.url()).pathname;
  await maker.getByText('36 × 60 in').first().waitFor();
  expect(await maker.getByText('not known yet').count()).toBeGreaterThan(3);
  await maker.getByText('find out what the wall is made of').waitFor();
  const pictures = maker.getByRole('list', { name: 'Pictures of the request' });
  expect(await pictures.getByRole('img').count()).toBe(2);
  await noAxeViolations(maker);
});

test('it waits for the gallery, and the owner writes down what was agreed', async () => {
  expect(await nextSentence(maker)).toContain('propose a price and a day.');
  expect(await maker.getByRole('link', { name: 'Write a proposal' }).count()).toBe(0);

  await owner.goto(sheet);
  await owner.getByRole('link', { name: 'Write down what was agreed' }).first().click();
  await owner.getByLabel('Price before tax').fill('9,680');
  await noAxeViolations(owner);
  await owner.getByRole('button', { name: 'Write the agreement down' }).click();
  await owner.waitForURL(/done=agreement/);
  await owner.getByText('$9,680.00').first().waitFor();
});

async function showAndApprove(page: Page, what: 'sketch' | 'tile') {
  const name = what === 'sketch' ? 'Show a sketch' : 'Show a colour tile';
  await page.goto(sheet);
  await page.getByRole('link', { name }).first().click();
  await page
    .getByLabel(what === 'sketch' ? 'The sketch' : 'The tile')
    .setInputFiles(await aPhoto(40));
  if (what === 'tile') await page.getByLabel('Glazes in their order').fill('celadon, cone 6');
  await page.getByRole('button', { name: 'Put it on the sheet' }).click();
  await page.waitForURL(/done=(sketch|colours)/);
  const label = what === 'sketch' ? 'sketch A' : 'tile 1';
  if (what === 'tile') {
    await page.getByRole('link', { name: 'Give the twin of tile 1' }).first().click();
    await page.getByRole('button', { name: 'The twin is with them' }).click();
    await page.waitForURL(/done=given/);
  }
  await page
    .getByRole('link', { name: `Write down the yes to ${label}` })
    .first()
    .click();
  await page.getByLabel('on a signed card').check();
  await noAxeViolations(page);
  await page.getByRole('button', { name: 'Write down the yes to' }).click();
  await page.waitForURL(/done=yes/);
}

test('the sketch and the colours are shown and get their yes', async () => {
  expect(await nextSentence(maker)).toContain('draw and show sketch A.');
  await showAndApprove(maker, 'sketch');
  expect(await nextSentence(maker)).toContain('make and show colour tile 1.');
  await showAndApprove(maker, 'tile');
  await maker.getByText('Marit Oland said yes on a signed card').first().waitFor();
});

test('the gallery asks for the deposit and takes it; the slip tells what remains', async () => {
  expect(await nextSentence(gallery)).toMatch(/ask for the deposit, \$[\d,]+\.\d\d\./);
  await gallery.getByRole('link', { name: 'Ask for the deposit' }).click();
  await gallery.getByRole('button', { name: 'Ask for it' }).click();
  await gallery.waitForURL(/done=ask/);
  await gallery.getByRole('link', { name: 'Take a payment' }).first().click();

  await gallery.getByLabel('Amount').fill('99,999');
  await gallery.getByText('Bank transfer').click();
  await gallery.getByRole('button', { name: 'Take the payment' }).click();
  await gallery.getByText(/No more than \$[\d,]+\.\d\d is owed in all\./).waitFor();
  await gallery.reload();
  await gallery.getByText('Bank transfer').click();
  await gallery.getByRole('button', { name: 'Take the payment' }).click();
  await gallery.waitForURL(/\/payments\/\d+/);
  await gallery.getByText('This slip is not an invoice.').waitFor();
  await gallery.getByText('Remaining').waitFor();
  await noAxeViolations(gallery);
});

test('the job is opened, and the studio can begin with its clay', async () => {
  expect(await nextSentence(maker)).toContain('open the job');
  await maker.getByRole('link', { name: 'Open the job' }).first().click();
  await maker.getByLabel('How many parts to begin').fill('24');
  await maker.getByRole('button', { name: 'Open the job' }).click();
  await maker.waitForURL(/done=job/);
  expect(await nextSentence(maker)).toMatch(/begin with the clay of job \d+\./);
  await maker.getByRole('link', { name: /^Go to job/ }).click();
  await maker.waitForURL(/\/studio\/\d+/);
});

test('the sheet shows all of it, and the list finds it by a slip of the pen', async () => {
  await owner.goto(sheet);
  await noAxeViolations(owner);
  const done = owner.getByRole('list', { name: 'From the agreement to the wall' });
  expect((await done.innerText()).split('\n').filter((word) => word.includes('done'))).toHaveLength(
    4,
  );
  await owner.goto('/commissions?find=Marit%20Olnad');
  await owner.getByRole('link', { name: title }).waitFor();
  await noAxeViolations(owner);
});

test('without scripts a request is written down all the same', async () => {
  const state = await owner.context().storageState();
  const plain = await browser.newContext({
    ...{ javaScriptEnabled: false, storageState: state },
    baseURL: new URL(owner.url()).origin,
  });
  const page = await plain.newPage();
  await page.goto('/commissions/new');
  await page.getByLabel('A title to find it by').fill(`${title}, plain`);
  await page.getByLabel('Their name').fill('Kenji Aldersey');
  await page.getByRole('button', { name: 'Write the request down' }).click();
  await page.waitForURL(/\/commissions\/\d+\?done=logged/);
  expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe(`${title}, plain`);
  await plain.close();
});
