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
const phone = { width: 390, height: 844 };

/** A relief on the bench whose board is open, still empty; gives the address of its parts. */
async function anEmptyBoard(page: Page): Promise<string> {
  const called = `Kelp and herring ${randomUUID().slice(0, 4)}`;
  await page.goto('/studio/new');
  await page.getByLabel('What is made').fill(called);
  await page.getByLabel('hand-built slab relief').check();
  await page.getByLabel('How many are to come out good').fill('1');
  await page.getByLabel('How many to begin').fill('1');
  await page.getByRole('button', { name: 'Put it on the bench' }).click();
  await page.getByRole('heading', { name: called, level: 1 }).waitFor();
  const parts = `${new URL(page.url()).pathname}/parts`;
  await page.goto(parts);
  await page.getByRole('link', { name: 'Draw its parts' }).click();
  await board(page).waitFor();
  return parts;
}

function board(page: Page): Locator {
  return page.getByRole('application', { name: /^The drawing/ });
}

/** Touches the drawing at a share of its width and height, the rim left out. */
async function touch(page: Page, across: number, down: number): Promise<void> {
  const box = await board(page).boundingBox();
  if (!box) throw new Error('The board is not to be seen.');
  const rim = (30 / 1060) * box.width;
  await page.mouse.click(
    box.x + rim + across * (box.width - 2 * rim),
    box.y + rim + down * (box.height - 2 * rim),
  );
}

async function layGrid(page: Page, rows: string, columns: string): Promise<void> {
  await page.getByLabel('Rows').fill(rows);
  await page.getByLabel('Columns').fill(columns);
  await page.getByRole('button', { name: /grid/ }).click();
}

async function save(page: Page): Promise<void> {
  await page.getByLabel('Finished width').fill('36');
  await page.getByLabel('Finished height').fill('24');
  await page.getByRole('button', { name: /^Save/ }).click();
}

async function noWider(page: Page): Promise<void> {
  const over = await page.evaluate('document.documentElement.scrollWidth - window.innerWidth');
  expect(over).toBe(0);
}

test('a relief is cut into numbered parts, and they are followed by touch', async () => {
  const page = await openPage(browser, tablet);
  await signInAs(page, 'maker');
  await anEmptyBoard(page);
  await layGrid(page, '2', '3');
  await page.getByRole('application', { name: 'The drawing, 6 parts' }).waitFor();

  await page.getByRole('button', { name: 'Cut a part in two' }).click();
  await touch(page, 0.15, 0.25);
  await page.getByText('Part 1: touch where the cut begins').waitFor();
  await touch(page, 0.02, 0.25);
  await touch(page, 0.45, 0.25);
  await page.getByRole('application', { name: 'The drawing, 7 parts' }).waitFor();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('application', { name: 'The drawing, 6 parts' }).waitFor();
  await noAxeViolations(page);
  await noWider(page);
  await save(page);
  await page.getByText('6 numbered parts.').waitFor();

  await page.getByRole('link', { name: 'Part 5, not begun' }).click();
  await page.getByRole('heading', { name: 'Part 5' }).waitFor();
  await page.getByRole('button', { name: 'Move part 5 on to transferring the sketch' }).click();
  await page.getByText('1 piece moved to transferring the sketch.').waitFor();
  await page.getByRole('link', { name: 'Part 5, stands at transferring the sketch' }).waitFor();

  await page.getByRole('button', { name: 'not begun: 5' }).click();
  await page.getByText('numbers 1 to 4 and 6').waitFor();
  await page.getByRole('button', { name: 'Move these 5 parts on' }).click();
  await page.getByText('5 pieces moved to transferring the sketch.').waitFor();

  await page.getByRole('link', { name: /^Part 2, / }).click();
  await page.getByText('Lost: part 2').click();
  await page.getByLabel('Why').selectOption('joint');
  await page.getByRole('button', { name: 'Write it down as lost' }).click();
  await page.getByRole('link', { name: 'Part 2, not begun, made anew' }).waitFor();
  await noAxeViolations(page);
  await noWider(page);
});

test('two who draw at once lose nothing: the second is told, and chooses', async () => {
  const first = await openPage(browser);
  await signInAs(first, 'maker');
  const parts = await anEmptyBoard(first);
  const second = await openPage(browser, phone);
  await signInAs(second, 'owner');
  await second.goto(`${parts}/draw`);
  await layGrid(first, '2', '2');
  await layGrid(second, '1', '5');
  await save(first);
  await first.getByText('4 numbered parts.').waitFor();
  await save(second);
  await second.getByText('saved another drawing while you drew').waitFor();
  await second.getByRole('application', { name: 'The drawing, 5 parts' }).waitFor();
  await noWider(second);
  await second.getByRole('button', { name: 'Save mine in its place' }).click();
  await second.getByText('5 numbered parts.').waitFor();
});

test('a drawing that was not saved is found on the device again', async () => {
  const page = await openPage(browser);
  await signInAs(page, 'maker');
  await anEmptyBoard(page);
  await layGrid(page, '3', '3');
  await page.getByRole('application', { name: 'The drawing, 9 parts' }).waitFor();
  await page.reload();
  await page.getByRole('button', { name: 'Go on with it' }).click();
  await page.getByRole('application', { name: 'The drawing, 9 parts' }).waitFor();
});

test('a part is drawn with keys alone', async () => {
  const page = await openPage(browser);
  await signInAs(page, 'maker');
  await anEmptyBoard(page);
  await board(page).focus();
  const along = async (key: string, times: number) => {
    for (let time = 0; time < times; time += 1) await page.keyboard.press(key);
  };
  await along('Shift+ArrowLeft', 4);
  await along('Space', 1);
  await along('Shift+ArrowRight', 6);
  await along('Space', 1);
  await along('Shift+ArrowDown', 4);
  await along('Space', 1);
  await along('Enter', 1);
  await page.getByRole('application', { name: 'The drawing, 1 part' }).waitFor();
});
