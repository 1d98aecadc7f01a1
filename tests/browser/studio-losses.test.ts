import { randomUUID } from 'node:crypto';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '../helpers/browser';

let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const tablet = { width: 820, height: 1180 };

/** Moves the pieces that are furthest on to the next step, until the job says they are there. */
async function moveOnTo(page: Page, name: string): Promise<void> {
  await page
    .getByRole('button', {
      name: `Move ${name === 'finished' ? 'to the finished ones' : `on to ${name}`}`,
    })
    .click();
  const moved = name === 'finished' ? /(is|are) finished\./ : `moved to ${name}.`;
  await justMoved(page).getByText(moved).waitFor();
}

/** What was just moved, with its undo beside it. */
function justMoved(page: Page): Locator {
  return page.getByRole('complementary', { name: 'What was just moved' });
}

async function tellLoss(page: Page, lost: { pieces: string; why: string; seen: string }) {
  await page.getByLabel('How many are lost').fill(lost.pieces);
  await page.getByLabel(lost.why).check();
  await page.getByLabel('What was seen').fill(lost.seen);
  await page.getByRole('button', { name: 'Write the loss down' }).click();
}

test('a stock job loses pieces, makes them good, and comes finished into stock', async () => {
  const page = await openPage(browser, tablet);
  await signInAs(page, 'maker');
  await page.goto('/studio/new');
  const title = `Gull bowls ${randomUUID().slice(0, 4)}`;
  await page.getByLabel('What is made').fill(title);
  await page.getByLabel('Thrown').check();
  await page.getByLabel('How many are to come out good').fill('4');
  await page.getByText(/^Begin \d+ pieces for 4/).waitFor();
  await page.getByLabel('How many to begin').fill('5');
  const piece = page.getByLabel('Which piece of the stock list');
  const code = (await piece.locator('option').nth(3).innerText()).split(' · ').at(-1) ?? '';
  await piece.selectOption({ index: 3 });
  await page.getByRole('button', { name: 'Put it on the bench' }).click();
  await page.getByRole('heading', { name: title, level: 1 }).waitFor();
  for (const step of ['throwing', 'trimming', 'drying']) await moveOnTo(page, step);

  await page.getByRole('link', { name: 'Some are lost' }).click();
  await page.getByText('One of them is spare.').waitFor();
  await noAxeViolations(page);
  await tellLoss(page, { pieces: '9', why: 'dried too fast', seen: 'By the window.' });
  await page.getByText('Only 5 of the 9 stand at drying.').waitFor();
  expect(await page.getByLabel('What was seen').inputValue()).toBe('By the window.');
  expect(await page.getByLabel('dried too fast').isChecked()).toBe(true);
  await tellLoss(page, { pieces: '2', why: 'dried too fast', seen: 'By the window.' });
  await justMoved(page)
    .getByText('2 pieces are lost: dried too fast. One is begun anew.')
    .waitFor();
  await page.getByText('2 lost, 1 begun anew').waitFor();

  await justMoved(page).getByRole('button', { name: 'Undo' }).click();
  await justMoved(page).getByText('2 pieces are back at drying.').waitFor();
  await page.getByRole('link', { name: 'Some are lost' }).click();
  await tellLoss(page, { pieces: '1', why: 'burst by steam', seen: '' });
  await justMoved(page).getByText('1 piece is lost: burst by steam.').waitFor();
  for (const step of ['the bisque kiln', 'glazing', 'the glaze kiln', 'finishing', 'finished']) {
    await moveOnTo(page, step);
  }
  await justMoved(page)
    .getByText(/4 pieces are finished\. They are in stock: /)
    .waitFor();
  await noAxeViolations(page);
  await page.goto(`/stock/${code}/moves`);
  await page
    .getByText(/came from the studio \(Oriel/)
    .first()
    .waitFor();
});

test('a part of a commission that is made anew moves its day, and its sheet says so', async () => {
  const page = await openPage(browser, tablet);
  await signInAs(page, 'owner');
  await page.goto('/studio');
  const job = page
    .getByRole('region', { name: 'glazing', exact: true })
    .getByRole('article')
    .filter({ has: page.getByRole('link', { name: /^commission \d+$/ }) })
    .first();
  const sheet =
    (await job.getByRole('link', { name: /^commission \d+$/ }).getAttribute('href')) ?? '';
  await page.goto(sheet);
  await page
    .getByText(/Ready by .+ in 80 of 100/)
    .first()
    .waitFor();
  const before = await page
    .getByText(/Ready by .+ in 80 of 100/)
    .first()
    .innerText();
  await page.goto('/studio');
  await job.getByRole('link', { name: 'Some are lost' }).click();
  await tellLoss(page, { pieces: '2', why: 'dropped or knocked', seen: 'The shelf gave way.' });
  await justMoved(page)
    .getByText(/2 pieces are lost: dropped or knocked\. 2 are begun anew\./)
    .waitFor();
  await page.goto(sheet);
  await page.getByText(/2 pieces are made anew since/).waitFor();
  const after = await page
    .getByText(/Ready by .+ in 80 of 100/)
    .first()
    .innerText();
  expect(after).not.toBe(before);
  await noAxeViolations(page);
});
