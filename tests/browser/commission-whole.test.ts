import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import sharp from 'sharp';
import type { Browser, Page } from 'playwright-core';
import { z } from 'zod';
import { noAxeViolations, openBrowser, openPage, signInAs } from '@/tests/helpers/browser';
import { askOutside } from '@/tests/helpers/launches';

// One commission from the request to the last cent, with its owner, its maker and its collector in
// three browsers; a colour is turned down once, and a change order signed. The books are looked at
// from outside at every step.

let browser: Browser;
let owner: Page;
let maker: Page;
let collector: Page;
let sheet: string;
let door: string;

const title = `Terns over the bar ${Date.now()}`;

beforeAll(async () => {
  browser = await openBrowser();
  owner = await openPage(browser);
  maker = await openPage(browser, { width: 820, height: 1180 });
  collector = await openPage(browser, { width: 390, height: 844 });
  await signInAs(owner, 'owner');
  await signInAs(maker, 'maker');
});

afterAll(() => browser.close());

async function aPhoto(shade: number) {
  const background = { r: 120, g: shade, b: 160 };
  const buffer = await sharp({ create: { width: 800, height: 500, channels: 3, background } })
    .jpeg()
    .toBuffer();
  return { name: 'photo.jpg', mimeType: 'image/jpeg', buffer };
}

const money = z.array(z.object({ held: z.string(), owed: z.string(), paid: z.string() }));

/** What the books hold for this commission, what is owed to us, and what came in: in cents. */
async function books() {
  const rows: unknown = await askOutside(
    inject('dataDir'),
    `select coalesce(-sum(p."amountCents") filter (where p."accountCode" = '2000'), 0)::text as held,
       coalesce(sum(p."amountCents") filter (where p."accountCode" = '1100'), 0)::text as owed,
       (select coalesce(sum("amountCents"), 0) from "CommissionPayment" where "commissionId" = c.id)::text as paid
     from "Commission" c left join "Posting" p on p."commissionId" = c.id
     where c.title = '${title}' group by c.id`,
  );
  return money.parse(rows)[0];
}

async function next(): Promise<string> {
  await owner.goto(sheet);
  return (await owner.getByRole('region', { name: 'What is next' }).innerText()).trim();
}

async function cents(name: string): Promise<bigint> {
  await owner.goto(sheet);
  const row = owner.locator('#money dl > div').filter({ hasText: new RegExp(`^${name}`) });
  return BigInt((await row.locator('data').first().getAttribute('value')) ?? '-1');
}

test('the maker writes the request down, the owner prices it and sends the proposal', async () => {
  await maker.goto('/commissions/new');
  await maker.getByLabel('A title to find it by').fill(title);
  await maker.getByLabel('Their name').fill('Solveig Aune');
  await maker.getByLabel('Height').first().fill('30');
  await maker.getByLabel('Width').first().fill('50');
  await maker.getByRole('button', { name: 'Write the request down' }).click();
  await maker.waitForURL(/\/commissions\/\d+\?done=logged/);
  sheet = new URL(maker.url()).pathname;
  expect(await next()).toContain('propose a price and a day');

  await owner.goto(`${sheet}/proposal/new`);
  await owner.getByText('By area').first().waitFor();
  await noAxeViolations(owner);
  await owner.getByRole('button', { name: 'Keep this proposal' }).click();
  await owner.waitForURL(/\/proposal$/);
  await noAxeViolations(owner);
  await owner.getByRole('button', { name: 'It goes out now' }).click();
  await owner.waitForURL(/done=proposal-sent/);
  expect(await next()).toMatch(/Waiting for the collector since .*: answer proposal 1/);
});

test('the collector opens their page from the address alone, and accepts', async () => {
  await owner.goto(`${sheet}/their-page`);
  await owner.getByRole('button', { name: 'Make the address' }).click();
  const letter = owner.getByText(/\/c\/[\w-]{43}/).first();
  await letter.waitFor();
  const shown = await owner.content();
  door = /\/c\/[\w-]{43}/.exec(shown)?.[0] ?? '';
  expect(door).not.toBe('');

  await collector.goto(door);
  await collector.getByText('Proposal 1 is waiting for your word.').waitFor();
  await noAxeViolations(collector);
  await collector.getByRole('link', { name: 'Read it and answer' }).click();
  await noAxeViolations(collector);
  await collector.getByText('Yes, I accept this proposal').click();
  await collector.getByRole('button', { name: 'Send my answer' }).click();
  await collector.getByText('Yes to proposal 1').waitFor();
  expect(await next()).toContain('sign the agreement');
});

test('they sign the agreement; nothing may be cut before sketch, colours and deposit', async () => {
  await collector.goto(`${door}/agreement`);
  await noAxeViolations(collector);
  await collector.getByRole('button', { name: /sign/i }).click();
  await collector.getByText('It is agreed', { exact: true }).waitFor();
  await owner.goto(sheet);
  await owner.getByText('The original and its signed changes').first().waitFor();
  expect(await next()).toContain('draw and show sketch A');
  expect(await books()).toEqual({ held: '0', owed: '0', paid: '0' });
  expect(await cents('Due now')).toBeGreaterThan(0n);
});

async function showTile(shade: number) {
  await maker.goto(`${sheet}/colours`);
  await maker.getByLabel('The tile, the middle of its range').setInputFiles(await aPhoto(shade));
  await maker.getByLabel('Glazes in their order').fill('celadon over iron slip');
  await maker.getByLabel('For which areas').fill('Sky');
  await maker.getByRole('button', { name: 'Put it on the sheet' }).click();
  await maker.waitForURL(/done=colours/);
  await maker.getByRole('link', { name: /^Give the twin of tile/ }).click();
  await maker.getByRole('button', { name: 'The twin is with them' }).click();
  await maker.waitForURL(/done=given/);
}

test('a sketch gets its yes; a colour is turned down, and the next one is taken', async () => {
  await maker.goto(`${sheet}/sketch`);
  await maker.getByLabel('The sketch').setInputFiles(await aPhoto(30));
  await maker.getByLabel('Area 1').fill('Sky');
  await maker.getByRole('button', { name: 'Put it on the sheet' }).click();
  await maker.waitForURL(/done=sketch/);
  await collector.goto(door);
  await collector.getByRole('link', { name: 'Look at it and answer' }).click();
  await noAxeViolations(collector);
  await collector.getByRole('button', { name: 'Yes to this sketch' }).click();
  await collector.getByText('Your yes is kept, bound to exactly that picture.').waitFor();
  expect(await next()).toContain('make and show colour tile 1, for Sky');

  await showTile(60);
  await collector.goto(door);
  await collector.getByRole('link', { name: 'Look at it and answer' }).click();
  await collector.getByLabel('What should be otherwise').fill('Greyer, like the water in March.');
  await collector.getByRole('button', { name: 'Ask for these changes' }).click();
  await collector.getByText('What should be otherwise is with the studio.').waitFor();
  expect(await next()).toContain('make and show colour tile 2, for Sky');

  await showTile(90);
  await collector.goto(door);
  await collector.getByRole('link', { name: 'Look at it and answer' }).click();
  await collector.getByRole('button', { name: 'Yes to this colour' }).click();
  await collector.getByText('looked at in the hand').first().waitFor();
  await collector.getByText('I looked at the fired tile itself, by daylight').click();
  await collector.getByRole('button', { name: 'Yes to this colour' }).click();
  await collector.getByText('Your yes is kept, bound to exactly that picture.').waitFor();
});

async function pay(amount?: string) {
  await owner.goto(`${sheet}/payment`);
  if (amount) await owner.getByLabel('Amount').fill(amount);
  await owner.getByText('Bank transfer').click();
  await owner.getByRole('button', { name: 'Take the payment' }).click();
  await owner.waitForURL(/\/payments\/\d+/);
}

test('the deposit is asked for and paid in two parts; the books hold exactly that', async () => {
  await owner.goto(`${sheet}/ask`);
  await owner.getByRole('button', { name: 'Ask for it' }).click();
  await owner.waitForURL(/done=ask/);
  await pay('100');
  expect(await books()).toEqual({ held: '10000', owed: '0', paid: '10000' });
  await pay();
  const paid = await cents('Paid');
  expect(await books()).toEqual({ held: String(paid), owed: '0', paid: String(paid) });
  expect(await cents('Due now')).toBe(0n);
  expect(await next()).toContain('open the job');
});

test('a change order counts once the collector has signed it, and not before', async () => {
  const before = await cents('Agreed, with tax');
  await owner.goto(`${sheet}/change`);
  await owner.getByLabel('What becomes of it').fill('One more tern, low at the left.');
  await owner.getByLabel('By how much, before tax').fill('400');
  await owner.getByRole('button', { name: 'Write the change order' }).click();
  await owner.waitForURL(/\/change\/1$/);
  await noAxeViolations(owner);
  expect(await cents('Agreed, with tax')).toBe(before);

  await collector.goto(door);
  await collector.getByRole('link', { name: 'Read it and sign' }).click();
  await collector.getByRole('button', { name: /sign/i }).click();
  await collector.getByText('Your signature is kept, under exactly those words.').waitFor();
  const after = await cents('Agreed, with tax');
  expect(after - before).toBeGreaterThan(40_000n);
  const [balance, paid] = [await cents('Balance'), await cents('Paid')];
  expect(balance).toBe(after - paid);
});

test('it is made, the balance is paid, it is handed over, and nothing is owed or held', async () => {
  await maker.goto(`${sheet}/job`);
  await maker.getByLabel('slip-cast').check();
  await maker.getByLabel('How many parts to begin').fill('6');
  await maker.getByRole('button', { name: 'Open the job' }).click();
  await maker.waitForURL(/done=job/);
  await maker.getByRole('link', { name: /^Go to job/ }).click();
  await maker.waitForURL(/\/studio\/\d+/);
  const bench = maker.url();
  for (let step = 0; step < 20; step += 1) {
    const move = maker.getByRole('button', { name: /^Move / }).first();
    if ((await move.count()) === 0) break;
    const moved = maker.waitForResponse((answer) => answer.request().method() === 'POST');
    await move.click();
    await moved;
    await maker.goto(bench);
  }
  expect(await next()).toContain('find out what its wall is made of');

  await owner.goto(`${sheet}/hand-over`);
  await owner.getByRole('button', { name: 'Hand it over' }).click();
  await owner.getByText('is still owed before it leaves').waitFor();
  await pay();
  const total = await cents('Agreed, with tax');
  expect(await books()).toEqual({ held: String(total), owed: '0', paid: String(total) });

  await owner.goto(`${sheet}/hand-over`);
  await owner.getByRole('button', { name: 'Hand it over' }).click();
  await owner.waitForURL(/done=hand-over/);
  expect(await books()).toEqual({ held: '0', owed: '0', paid: String(total) });
  expect(await next()).toMatch(/^Handed over on .*, and paid\.$/);
  await noAxeViolations(owner);
  await collector.goto(door);
  await collector.getByText(/It is yours since/).waitFor();
});
