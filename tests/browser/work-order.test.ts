import { randomInt, randomUUID } from 'node:crypto';
import sharp from 'sharp';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '@/tests/helpers/browser';
import { askOutside } from '@/tests/helpers/launches';

// A work order on two telephones: one hour without a line, closing and opening again, two
// signatures for one piece, and a session that ran out meanwhile.

const title = `Wrack line in the hall ${randomUUID().slice(0, 6)}`;
const phone = { width: 390, height: 844 };

let browser: Browser;
let maker: Page;
let owner: Page;
let order: string;

beforeAll(async () => {
  browser = await openBrowser();
  maker = await openPage(browser, phone);
  owner = await openPage(browser, phone);
  await signInAs(maker, 'maker');
  await signInAs(owner, 'owner');
});
afterAll(() => browser.close());

async function ask(statement: string): Promise<Record<string, unknown>[]> {
  return (await askOutside(inject('dataDir'), statement)) as Record<string, unknown>[];
}

/** A piece that was agreed on and needs no job; the owner writes it down. */
async function agreedPiece(): Promise<string> {
  await owner.goto('/commissions/new');
  await owner.getByLabel('A title to find it by').fill(title);
  await owner.getByLabel('Their name').fill('Marit Oland');
  await owner.getByRole('button', { name: 'Write the request down' }).click();
  await owner.waitForURL(/done=logged/);
  await owner.goto(`${new URL(owner.url()).pathname}/agreement`);
  await owner.getByLabel('Price before tax').fill('1,200');
  await owner.getByRole('button', { name: 'Write the agreement down' }).click();
  await owner.waitForURL(/done=agreement/);
  const [row] = await ask(`select id from "Commission" where title = '${title}'`);
  return String(row?.['id']);
}

/** A day on which the maker leads, far ahead and at an hour of its own. */
async function aDay(kind: string, commissionId: string | null): Promise<string> {
  const id = randomUUID();
  const hours = 20_000 + randomInt(200_000);
  const whose = commissionId === null ? 'null' : `'${commissionId}'`;
  await ask(`insert into "Appointment" (id, kind, "commissionId", "leadId", "startsAt", "endsAt",
      address, "bookedById", "bookedAt")
    select '${id}', '${kind}', ${whose}, id, date_trunc('hour', now()) + interval '${hours} hours',
      date_trunc('hour', now()) + interval '${hours + 1} hours', '4 Ropewalk Lane', id, now()
    from "Staff" where "signInName" = 'oriel'`);
  return `/diary/${id}/work`;
}

async function aPhoto() {
  const background = { r: 90, g: 120, b: 110 };
  const buffer = await sharp({ create: { width: 3000, height: 2000, channels: 3, background } })
    .jpeg()
    .toBuffer();
  return { name: 'photo.jpg', mimeType: 'image/jpeg', buffer };
}

const ticks = () =>
  ask(`select item, "isDone", words from "WorkTick" where "appointmentId" = '${idOf(order)}'
    order by "tickedAt", id`);
const idOf = (path: string) => path.split('/')[2] ?? '';

/** Says why something is not there, and waits until the page says it back. */
async function say(page: Page, label: string, words: string, back = label): Promise<void> {
  await page.getByText(label, { exact: true }).first().click();
  const form = page.getByRole('form', { name: label });
  await form.getByLabel(label).fill(words);
  await form.getByRole('button', { name: 'Keep it' }).click();
  await page.getByText(`${back}: ${words}`).waitFor();
}

test('the page is there without a line, and what is not paid is told without an amount', async () => {
  const commissionId = await agreedPiece();
  await ask(`insert into "WallSurvey" (id, "commissionId", version, wall, "surveyedOn", "staffId", at)
    select gen_random_uuid(), '${commissionId}', 1, 'brick', now(), id, now()
    from "Staff" where "signInName" = 'oriel'`);
  order = await aDay('hanging', commissionId);
  await maker.goto(order);
  await maker.getByText('Call the owner before it is handed over').waitFor();
  expect(await maker.getByText('1,200').count()).toBe(0);
  await owner.goto(order);
  const back = 'The owner lets it go before it is paid';
  await say(owner, 'Why it goes before it is paid', 'They bring a cheque on Friday', back);
  await owner.getByText('Everything on this device is sent.').waitFor();
  await maker.reload();
  await maker.getByText('This page opens again on this device without a line.').waitFor();
  expect(await maker.getByText('Call the owner').count()).toBe(0);
  await noAxeViolations(maker);
  const paper = await maker.context().request.get(`${order}/pdf`);
  expect(paper.headers()['content-type']).toBe('application/pdf');
});

test('an hour without a line: nothing is lost by a reload, or by closing the page', async () => {
  const context = maker.context();
  await context.setOffline(true);
  await maker.getByLabel('The tools are in the van').check();
  await maker.getByLabel('The cleat is level').check();
  await maker.getByLabel('The cleat is level').uncheck();
  const weigh = maker.getByRole('form', { name: 'Weigh it' });
  await weigh.getByLabel('Weight from the scale').fill('0');
  await weigh.getByRole('button', { name: 'Keep the weight' }).click();
  await maker.getByText('A weight has to be more than zero.').waitFor();
  await weigh.getByLabel('Weight from the scale').fill('98 lb');
  await weigh.getByRole('button', { name: 'Keep the weight' }).click();
  await maker.getByText('By the scale it weighs 98 lb.').waitFor();
  const fixings = maker.getByRole('form', { name: 'A picture of the fixings' });
  await fixings.locator('input[type=file]').setInputFiles(await aPhoto());
  await fixings.getByRole('button', { name: 'Keep the picture' }).click();
  await maker.getByText('A picture of the fixings is there.').waitFor();
  await say(maker, 'What holds it, and who says so', 'Sleeve anchors in brick, by their maker');

  await maker.reload();
  await maker.getByText('6 things are kept on this device and not sent yet').waitFor();
  await maker.close();
  maker = await context.newPage();
  await maker.goto(order);
  await maker.getByText('6 things are kept on this device and not sent yet').waitFor();
  expect(await maker.getByLabel('The tools are in the van').isChecked()).toBe(true);
  expect(await maker.getByLabel('The cleat is level').isChecked()).toBe(false);
  await maker.getByText('By the scale it weighs 98 lb.').waitFor();
  await noAxeViolations(maker);
  expect((await ticks()).map(({ item }) => item)).toEqual(['owner_word']);
});

async function sign(page: Page, name: string): Promise<void> {
  const form = page.getByRole('form', { name: 'Sign the hand-over' });
  await form.getByLabel('Name', { exact: true }).fill(name);
  await page.getByRole('blockquote').getByText(`Taken by ${name}`).waitFor();
  await form.getByRole('button', { name: 'Hand it over' }).click();
}

test('two devices have it signed: one wins, the other is told, and its signature stays', async () => {
  await sign(maker, 'Ilse Oland');
  await maker.getByText('The signature is kept on this device').waitFor();

  await owner.goto(order);
  await say(owner, 'Why it was not weighed', 'The scale is with the others');
  await say(owner, 'Why there is no picture of the fixings', 'It is on the other telephone');
  await say(owner, 'What holds it, and who says so', 'Seen by the owner');
  await owner.getByText('Everything on this device is sent.').waitFor();
  await sign(owner, 'Marit Oland');
  await owner.getByText('It is handed over', { exact: true }).first().waitFor();
  await owner.getByText('Marit Oland signed').waitFor();

  await maker.context().setOffline(false);
  await maker.getByText('Not taken in: The signature of Ilse Oland').waitFor({ timeout: 40_000 });
  const told = maker.getByText('It was handed over already: Marit Oland signed');
  expect(await told.innerText()).toContain('with Maren Tidewell');
  await maker.reload();
  await maker.getByText('Not taken in: The signature of Ilse Oland').waitFor();
  expect(await maker.getByText('not sent yet').count()).toBe(0);
});

test('everything arrived once, in its order, and the piece was handed over once', async () => {
  const items = (await ticks()).map(({ item, isDone }) => `${String(item)} ${String(isDone)}`);
  expect(items).toEqual([
    'owner_word true',
    ...['tools_loaded true', 'cleat_level true', 'cleat_level false', 'plan_word true'],
    ...['no_scale true', 'no_fixings_picture true', 'plan_word true'],
  ]);
  const kept = await ask(`select p.kind, p."weightG" from "Progress" p
    join "Commission" c on c.id = p."commissionId" where c.title = '${title}' order by p.id`);
  expect(kept).toEqual([
    { kind: 'weight', weightG: 44_452 },
    { kind: 'fixing', weightG: null },
  ]);
  const handed = await ask(`select h."signedBy", h."evenIfOwed" from "HandOver" h
    where h."appointmentId" = '${idOf(order)}'`);
  expect(handed).toEqual([
    { signedBy: 'Marit Oland', evenIfOwed: 'They bring a cheque on Friday' },
  ]);
});

test('a session that ran out meanwhile: it is kept, asked to sign in, and then sent', async () => {
  order = await aDay('delivery', null);
  await maker.goto(order);
  await maker.getByText('This page opens again on this device without a line.').waitFor();
  await maker.context().setOffline(true);
  await maker.getByLabel('Whoever lets us in was called').check();
  await maker.getByText('One thing is kept on this device and not sent yet').waitFor();
  await ask(`update "StaffSession" set "endedAt" = now() where "endedAt" is null and "staffId" =
    (select id from "Staff" where "signInName" = 'oriel')`);
  await maker.context().setOffline(false);
  await maker.getByText('You were signed out in the meantime.').waitFor({ timeout: 40_000 });
  expect(await ticks()).toEqual([]);
  await signInAs(maker, 'maker');
  await maker.getByText('Kept on this device, and not sent yet').first().waitFor();
  await maker.goto(order);
  await maker.getByText('Everything on this device is sent.').waitFor();
  expect((await ticks()).map(({ item }) => item)).toEqual(['called_ahead']);
});

test('whoever signs out takes the kept pages with them', async () => {
  const kept = () => maker.evaluate('caches.keys()');
  expect(await kept()).toContain(`work-order ${order}`);
  await maker.goto('/sign-out');
  await maker.getByRole('button', { name: 'Sign out', exact: true }).click();
  await maker.waitForURL((url) => url.pathname === '/sign-in');
  await expect.poll(kept).toEqual([]);
});
