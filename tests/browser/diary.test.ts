import { randomInt } from 'node:crypto';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '../helpers/browser';

let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** The stories may be told again on the same gallery, so they begin in a week of their own. */
const weeksAhead = 10 + randomInt(80);

/** A day of that week, far enough ahead that the demo has nothing on it; 0 is its Sunday. */
function dayOfWeek(weekday: number): string {
  const soon = new Date(Date.now() + 7 * weeksAhead * 86_400_000);
  const ms = soon.getTime() + (weekday - soon.getUTCDay()) * 86_400_000;
  return new Date(ms).toISOString().slice(0, 10);
}

type Wish = { day: string; from: string; to: string; where: string };

async function book(page: Page, { day, from, to, where }: Wish): Promise<void> {
  await page.goto('/diary/book');
  await page.getByLabel('Hanging').check();
  await page.getByLabel('Day', { exact: true }).fill(day);
  await page.getByLabel('From', { exact: true }).fill(from);
  await page.getByLabel('To', { exact: true }).fill(to);
  await page.getByLabel('Who leads it').selectOption({ label: 'Oriel Sandray' });
  await page.getByLabel('Where', { exact: true }).fill(where);
  await page.getByRole('button', { name: 'Book it' }).click();
}

test('the gallery books a hanging; booking the same lead again is told in words', async () => {
  const page = await openPage(browser);
  await signInAs(page, 'gallery');
  const day = dayOfWeek(3);
  await book(page, { day, from: '09:00', to: '12:00', where: '4 Ropewalk Lane' });
  await page.getByText('Hanging booked for').waitFor();
  await noAxeViolations(page);
  await book(page, { day, from: '11:00', to: '13:00', where: '9 Ferry Steps' });
  const refusal = page.getByText('Oriel Sandray is elsewhere then: the hanging at 4 Ropewalk Lane');
  await refusal.waitFor();
  expect(await refusal.innerText()).toContain('9:00 am to 12:00 pm');
  expect(await page.getByLabel('Where', { exact: true }).inputValue()).toBe('9 Ferry Steps');
  expect(await page.getByLabel('From', { exact: true }).inputValue()).toBe('11:00');
  await noAxeViolations(page);
  await page.getByLabel('From', { exact: true }).fill('12:00');
  await page.getByRole('button', { name: 'Book it' }).click();
  await page.getByText('Hanging booked for').waitFor();
});

test('an appointment is moved, then called off with a reason, and its hours are free', async () => {
  const page = await openPage(browser, { width: 390, height: 844 });
  await signInAs(page, 'gallery');
  const day = dayOfWeek(4);
  await book(page, { day, from: '09:00', to: '12:00', where: '2 Alder Rise' });
  await page.getByText('Hanging booked for').waitFor();
  const move = page.getByRole('form', { name: 'Move it' });
  await move.getByLabel('From').fill('13:00');
  await move.getByLabel('To', { exact: true }).fill('12:30');
  await move.getByRole('button', { name: 'Move it' }).click();
  await page.getByText('It would end before it starts.').waitFor();
  await move.getByLabel('To', { exact: true }).fill('15:30');
  await move.getByRole('button', { name: 'Move it' }).click();
  await page.getByText('The hanging is now on').waitFor();
  const off = page.getByRole('form', { name: 'Call it off' });
  await off.getByRole('button', { name: 'Call it off' }).click();
  await page.getByText('Say why, so that nobody has to ask.').waitFor();
  await off.getByLabel('Why').fill('Rain all week');
  await off.getByRole('button', { name: 'Call it off' }).click();
  await page.getByText('Called off', { exact: true }).waitFor();
  expect(await page.getByRole('form').count()).toBe(0);
  await book(page, { day, from: '13:00', to: '15:30', where: '7 Net Loft' });
  await page.getByText('Hanging booked for').waitFor();
  await page.goto(`/diary?month=${day.slice(0, 7)}`);
  await page.getByText('Called off: Rain all week').waitFor();
  await noAxeViolations(page);
});

test('a day on which all are closed is asked about, and the word stands on its page', async () => {
  const page = await openPage(browser, { width: 390, height: 844 });
  await signInAs(page, 'gallery');
  const day = dayOfWeek(0);
  await book(page, { day, from: '09:00', to: '12:00', where: '5 Tide Row' });
  await page.getByText('The gallery is closed on').waitFor();
  await noAxeViolations(page);
  expect(await page.getByLabel('Where', { exact: true }).inputValue()).toBe('5 Tide Row');
  for (const word of await page
    .getByRole('group', { name: 'Not as it should be' })
    .getByRole('textbox')
    .all()) {
    await word.fill('They are away all week.');
  }
  await page.getByRole('button', { name: 'Book it' }).click();
  await page.getByText('Hanging booked for').waitFor();
  await page.getByRole('heading', { name: 'Decided all the same' }).waitFor();
  for (const view of [`day=${day}`, `week=${day}`, `month=${day.slice(0, 7)}`]) {
    await page.goto(`/diary?${view}`);
    await page.getByText('5 Tide Row').first().waitFor();
    await noAxeViolations(page);
  }
});

test('a time that the clocks skip is told, with the times that there are', async () => {
  const page = await openPage(browser);
  await signInAs(page, 'gallery');
  // The second Sunday of March: there is no half past two in the demo’s zone.
  await book(page, { day: '2032-03-14', from: '02:30', to: '05:00', where: '6 Tide Row' });
  await page.getByText('There is no 2:30 am on Sunday 14 March').waitFor();
});

test('everyone keeps the days on which they are away, and is asked about on them', async () => {
  const page = await openPage(browser);
  await signInAs(page, 'maker');
  const day = dayOfWeek(2);
  await page.goto('/diary/crew');
  await noAxeViolations(page);
  await page.getByRole('main').getByRole('link', { name: 'Oriel Sandray' }).click();
  const form = page.getByRole('form', { name: 'Write down days away' });
  await form.getByLabel('From').fill(day);
  await form.getByLabel('Why').fill('The ferry is in dock');
  await form.getByRole('button', { name: 'Write it down' }).click();
  await page.getByText('(The ferry is in dock)').first().waitFor();
  await noAxeViolations(page);
  await book(page, { day, from: '09:00', to: '10:00', where: '8 Tide Row' });
  await page.getByText('Oriel Sandray is away from').waitFor();
});

test('of two who change the same appointment, the second sees how it stands now', async () => {
  const [first, second] = [await openPage(browser), await openPage(browser)];
  await signInAs(first, 'gallery');
  await signInAs(second, 'owner');
  await book(first, {
    day: dayOfWeek(5),
    from: '09:00',
    to: '10:00',
    where: '11 Mill Steps',
  });
  await first.getByText('Hanging booked for').waitFor();
  await second.goto(first.url());
  await first.getByRole('form', { name: 'Move it' }).getByLabel('From').fill('08:00');
  await first.getByRole('button', { name: 'Move it' }).click();
  await first.getByText('The hanging is now on').waitFor();
  await second.getByRole('form', { name: 'Call it off' }).getByLabel('Why').fill('No van');
  await second.getByRole('button', { name: 'Call it off' }).click();
  await second.getByText('Somebody changed it while you were looking.').waitFor();
});

test('a commission’s own sheet leads to booking for it, with its address', async () => {
  const page = await openPage(browser);
  await signInAs(page, 'gallery');
  await page.goto('/diary/book');
  const option = page.getByLabel('For which commission').locator('option').nth(1);
  const number = /^\d+/.exec(await option.innerText())?.[0] ?? '';
  await page.goto(`/diary/book?commission=${number}`);
  await page.getByRole('link', { name: `Commission ${number}` }).waitFor();
  expect(await page.getByLabel('For which commission').count()).toBe(0);
  await page.goto('/diary/book?commission=99999');
  await page.getByText('Commission 99999 takes no appointment').waitFor();
});

test('whoever keeps the books has no diary', async () => {
  const page = await openPage(browser);
  await signInAs(page, 'books');
  expect((await page.goto('/diary'))?.status()).toBe(403);
  expect((await page.goto('/diary/book'))?.status()).toBe(403);
});
