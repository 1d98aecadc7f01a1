import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { expect, inject } from 'vitest';
import { z } from 'zod';
import { root } from './server';

const people = z.array(
  z.object({ signInName: z.string(), name: z.string(), role: z.string(), password: z.string() }),
);
const violations = z.array(
  z.object({ id: z.string(), help: z.string(), nodes: z.array(z.object({ html: z.string() })) }),
);

/** A real Chromium; the caller closes it. */
export async function openBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium',
    args: [
      ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'],
      ...['--disable-background-networking', '--disable-component-update', '--disable-sync'],
    ],
  });
}

/** A page with the demo gallery's address, so that `page.goto('/counter')` works. */
export async function openPage(
  browser: Browser,
  size = { width: 1440, height: 900 },
): Promise<Page> {
  const context = await browser.newContext({ baseURL: inject('baseUrl'), viewport: size });
  return context.newPage();
}

/** Signs in through the real door as the first person of the demo who has this role. */
export async function signInAs(page: Page, role: string): Promise<void> {
  const file = join(root, 'seed/people.json');
  const all = people.parse(JSON.parse(readFileSync(file, 'utf8')));
  const person = all.find((one) => one.role === role);
  if (!person) throw new Error(`Nobody in the demo gallery is “${role}”.`);
  await page.goto('/sign-in');
  await page.getByLabel('Name', { exact: true }).fill(person.signInName);
  await page.getByLabel('Password', { exact: true }).fill(person.password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
}

/** Fails with each thing on the page that someone could not use, and where it stands. */
export async function noAxeViolations(page: Page): Promise<void> {
  const source = readFileSync(
    createRequire(import.meta.url).resolve('axe-core/axe.min.js'),
    'utf8',
  );
  // The title comes with the stream of the page, a moment after what is seen.
  await page.locator('head > title').first().waitFor({ state: 'attached' });
  await page.evaluate(source);
  const found: unknown = await page.evaluate(
    "axe.run(document, { resultTypes: ['violations'] }).then((result) => result.violations)",
  );
  const told = violations
    .parse(found)
    .map((one) => `${one.help} (${one.id}): ${one.nodes.map((node) => node.html).join(' | ')}`);
  expect(told).toEqual([]);
}
