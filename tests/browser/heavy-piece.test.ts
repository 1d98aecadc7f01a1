import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import sharp from 'sharp';
import type { Browser, Page } from 'playwright-core';
import { noAxeViolations, openBrowser, openPage, signInAs } from '@/tests/helpers/browser';
import { askOutside } from '@/tests/helpers/launches';
import { readPaper } from '@/tests/helpers/paper-text';

// A finished relief of about a hundred pounds, from the wall that nobody knows to the signature in
// a house without a line: owner, maker and collector in three browsers, the books from outside.

const title = 'Fern bank above the weir';

let browser: Browser;
let owner: Page;
let maker: Page;
let collector: Page;
let sheet: string;
let order: string;

beforeAll(async () => {
  browser = await openBrowser();
  owner = await openPage(browser);
  maker = await openPage(browser, { width: 390, height: 844 });
  collector = await openPage(browser, { width: 390, height: 844 });
  await signInAs(owner, 'owner');
  await signInAs(maker, 'maker');
  const [found] = await ask(`select number from "Commission" where title = '${title}'`);
  sheet = `/commissions/${String(found?.['number'])}`;
});

afterAll(() => browser.close());

async function ask(statement: string): Promise<Record<string, unknown>[]> {
  return (await askOutside(inject('dataDir'), statement)) as Record<string, unknown>[];
}

async function next(): Promise<string> {
  await owner.goto(sheet);
  return (await owner.getByRole('region', { name: 'What is next' }).innerText()).trim();
}

/** What the books hold as a debt to the collector, and what they count as earned by a sale. */
async function books(): Promise<{ held: bigint; sold: bigint; owed: bigint }> {
  const [row] = await ask(`select
      coalesce(-sum(p."amountCents") filter (where p."accountCode" = '2000'), 0)::text as held,
      coalesce(sum(p."amountCents") filter (where p."accountCode" = '1100'), 0)::text as owed,
      (select coalesce(sum(s."totalCents"), 0)::text from "HandOver" h join "Sale" s on s.id = h."saleId"
        where h."commissionId" = c.id) as sold
    from "Commission" c left join "Posting" p on p."commissionId" = c.id
    where c.title = '${title}' group by c.id`);
  const cents = (name: string) => BigInt(String(row?.[name]));
  return { held: cents('held'), sold: cents('sold'), owed: cents('owed') };
}

async function aPhoto(shade: number) {
  const background = { r: 90, g: shade, b: 110 };
  const buffer = await sharp({ create: { width: 1200, height: 900, channels: 3, background } })
    .jpeg()
    .toBuffer();
  return { name: 'photo.jpg', mimeType: 'image/jpeg', buffer };
}

test('while nobody knows the wall, no day of a hanging can be found or booked', async () => {
  expect(await next()).toContain('find out what its wall is made of');
  await owner.goto(`${sheet}/days`);
  await owner
    .getByText(/what (the|its) wall is made of/i)
    .first()
    .waitFor();
  expect(await owner.getByRole('button', { name: 'Offer these days' }).count()).toBe(0);
  await noAxeViolations(owner);
});

test('the maker looks at the wall on a phone, and leaves open what nobody knows', async () => {
  await maker.goto(`${sheet}/wall`);
  await maker.getByLabel('The wall is made of').selectOption({ label: 'wood studs behind board' });
  await maker.getByLabel('How that was proved').fill('Magnet, and a fine nail to either side.');
  await maker.getByLabel('Wide', { exact: true }).first().fill('144');
  await maker.getByLabel('From floor to ceiling').fill('96');
  await maker.getByLabel('Studs, middle to middle').fill('16');
  await maker.getByLabel('First one, from the left end').fill('12');
  await maker.getByLabel('Board or plaster before it').fill('1/2');
  await noAxeViolations(maker);
  await maker.getByRole('button', { name: 'Keep it' }).click();
  await maker.getByText('The wall is written down.').waitFor();
  await maker.getByText('Still to look at').waitFor();
  expect(await next()).toContain('book the hanging');
});

test('the plan holds a hundred pounds on three studs, and says who lifts it', async () => {
  await maker.goto(`${sheet}/wall/plan`);
  await maker.getByLabel('Deep, with its board').fill('2 1/4');
  await maker.getByLabel('Weight, with its board').fill('100');
  await maker.getByRole('button', { name: /^Work it out/ }).click();
  await maker.getByText('The plan holds, and is kept.').waitFor();
  await noAxeViolations(maker);
  await maker
    .getByText(/9 No\. 12 wood screws/)
    .first()
    .waitFor();
  await maker
    .getByText(/Lift 100 lb with/)
    .first()
    .waitFor();
  const paper = await maker.context().request.get(`${sheet}/wall/plan/pdf`);
  expect(paper.status()).toBe(200);
  const { text } = await readPaper(await paper.body());
  expect(text).toContain('Local codes and a licensed contractor decide');
});

test('the balance that the agreement asks for is paid before the day', async () => {
  await owner.goto(`${sheet}/payment`);
  await owner.getByText('Bank transfer').click();
  await owner.getByRole('button', { name: 'Take the payment' }).click();
  await owner.waitForURL(/\/payments\/\d+/);
  const { held, sold } = await books();
  expect(held).toBeGreaterThan(600_000n);
  expect(sold).toBe(0n);
});

test('the collector chooses one of the days on which everyone is free, and it is booked', async () => {
  await owner.goto(`${sheet}/days`);
  await owner.getByLabel('Who leads it').selectOption({ label: 'Oriel Sandray' });
  await owner.getByRole('button', { name: /free/i }).first().click();
  await owner.waitForURL(/leadId=/);
  await owner.getByRole('button', { name: 'Offer these days' }).click();
  await owner.waitForURL(/done=days/);
  await owner.goto(`${sheet}/their-page`);
  await owner.getByRole('button', { name: 'Make the address' }).click();
  await owner
    .getByText(/\/c\/[\w-]{43}/)
    .first()
    .waitFor();
  const door = /\/c\/[\w-]{43}/.exec(await owner.content())?.[0] ?? '';
  await collector.goto(`${door}/days`);
  await noAxeViolations(collector);
  await collector.getByRole('radio').first().check();
  await collector.getByRole('button', { name: 'Book this day' }).click();
  await collector.waitForURL((url) => !url.pathname.endsWith('/days'));
  const [booked] =
    await ask(`select a.id from "Appointment" a join "Commission" c on c.id = a."commissionId"
    where c.title = '${title}' and a."calledOffAt" is null and a.kind = 'hanging'`);
  order = `/diary/${String(booked?.['id'])}/work`;
  expect(await next()).toMatch(/hang it on/);
});

async function tickAll(): Promise<number> {
  const boxes = maker.locator('li input[type=checkbox]');
  const count = await boxes.count();
  for (let at = 0; at < count; at += 1) {
    // It is ticked once the device keeps it, a moment after the touch.
    await boxes.nth(at).click();
    await expect.poll(() => boxes.nth(at).isChecked()).toBe(true);
  }
  return count;
}

test('the day is ticked, weighed, pictured and signed in a house without a line', async () => {
  await maker.goto(order);
  await maker.getByText('This page opens again on this device without a line.').waitFor();
  await noAxeViolations(maker);
  await maker.context().setOffline(true);
  const ticked = await tickAll();
  expect(ticked).toBeGreaterThan(8);
  const weigh = maker.getByRole('form', { name: 'Weigh it' });
  await weigh.getByLabel('Weight from the scale').fill('100 lb');
  await weigh.getByRole('button', { name: 'Keep the weight' }).click();
  await maker.getByText(/By the scale it weighs 100 lb/).waitFor();
  for (const name of ['A picture of the fixings', 'A picture in its place']) {
    const form = maker.getByRole('form', { name });
    await form.locator('input[type=file]').setInputFiles(await aPhoto(name.length * 4));
    await form.getByRole('button', { name: 'Keep the picture' }).click();
    await maker.getByText(`${name} is there.`).waitFor();
  }
  await maker.reload();
  await maker.getByText(/things are kept on this device and not sent yet/).waitFor();
  expect(await maker.locator('li input[type=checkbox]:checked').count()).toBe(ticked);
  const sign = maker.getByRole('form', { name: 'Sign the hand-over' });
  await sign.getByLabel('Name', { exact: true }).fill('Rosalind Teague');
  await sign.getByRole('button', { name: 'Hand it over' }).click();
  await maker.getByText('It was signed', { exact: true }).waitFor();
  const id = order.split('/')[2] ?? '';
  expect(await ask(`select item from "WorkTick" where "appointmentId" = '${id}'`)).toEqual([]);
  expect((await books()).sold).toBe(0n);
});

test('with a line again it is sent once: the sale is in the books, and the papers are there', async () => {
  await maker.context().setOffline(false);
  await maker.getByText('It is handed over', { exact: true }).first().waitFor({ timeout: 45_000 });
  await maker.getByText(/Rosalind Teague signed/).waitFor();
  const { held, sold, owed } = await books();
  expect(held).toBe(0n);
  expect(owed).toBe(0n);
  expect(sold).toBeGreaterThan(600_000n);
  const care =
    await ask(`select a.kind from "AfterCare" a join "Commission" c on c.id = a."commissionId"
    where c.title = '${title}' order by a."dueOn"`);
  expect(care.map(({ kind }) => kind)).toEqual(['two_days', 'thirty_days', 'a_year', 'fixings']);
  await owner.goto(`${sheet}/certificate`);
  await owner.getByRole('button', { name: 'Make the certificate' }).click();
  const certificate = await owner
    .getByRole('link', { name: 'Open it as a PDF' })
    .getAttribute('href');
  const { text } = await readPaper(
    await (await owner.context().request.get(certificate ?? '')).body(),
  );
  expect(text).toContain(title);
  for (const paper of ['care/pdf', 'hand-over/pdf']) {
    const answer = await owner.context().request.get(`${sheet}/${paper}`);
    expect(`${paper} ${answer.status()}`).toBe(`${paper} 200`);
  }
  expect(await next()).toMatch(/^Handed over on .*, and paid\.$/);
  await owner.goto('/month');
  await noAxeViolations(owner);
  await owner.locator('a[href^="/month/commissions"]').first().click();
  const [receipt] = await ask(`select s.number from "HandOver" h join "Sale" s on s.id = h."saleId"
    join "Commission" c on c.id = h."commissionId" where c.title = '${title}'`);
  const number = String(receipt?.['number']);
  await owner.getByRole('link', { name: number, exact: true }).first().click();
  await owner.getByText(title).first().waitFor();
});
