import { randomUUID } from 'node:crypto';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, inject, test } from 'vitest';
import { noAxeViolations, openBrowser, openPage, signInAs } from '../helpers/browser';

let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});

afterEach(async () => {
  await Promise.all(browser.contexts().map((context) => context.close()));
});

afterAll(() => browser.close());

async function knock(page: Page, name: string, password: string): Promise<void> {
  await page.getByLabel('Name', { exact: true }).fill(name);
  await page.getByLabel('Password', { exact: true }).fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
}

test('the page that was asked for is shown once one is let in', async () => {
  const page = await openPage(browser);
  await page.goto('/stock?find=tern');
  expect(new URL(page.url()).pathname).toBe('/sign-in');
  await knock(page, 'tomas', 'demo-clay-gallery');
  await page.waitForURL((url) => url.pathname === '/stock');
  expect(new URL(page.url()).search).toBe('?find=tern');
});

test('a wrong password is told in words, the name stays, the password does not', async () => {
  const page = await openPage(browser);
  await page.goto('/sign-in');
  await knock(page, 'tomas', 'heron at low water');
  await page.getByText('This name and this password do not belong together').waitFor();
  expect(await page.getByLabel('Name', { exact: true }).inputValue()).toBe('tomas');
  expect(await page.getByLabel('Password', { exact: true }).inputValue()).toBe('');
  await noAxeViolations(page);
});

test('after five wrong tries the door says how long to wait', async () => {
  const page = await openPage(browser);
  const name = `somebody-${randomUUID().slice(0, 8)}`;
  for (let tries = 0; tries < 5; tries += 1) {
    await page.goto('/sign-in');
    await knock(page, name, `guess number ${tries}`);
    await page.getByText('do not belong together').waitFor();
  }
  await knock(page, name, 'guess number 5');
  await page.getByText(/There were several wrong tries\. Wait \d+ seconds/).waitFor();
});

test('the door of the demo names its people, and each of them can come in', async () => {
  const page = await openPage(browser, { width: 390, height: 844 });
  await page.goto('/sign-in');
  await noAxeViolations(page);
  const people = page.getByRole('region', { name: 'This is the demo gallery' });
  for (const name of ['Maren Tidewell', 'Tomas Fennick', 'Oriel Sandray', 'Bettina Crake']) {
    expect(await people.getByText(name).isVisible()).toBe(true);
  }
  for (const role of ['owner', 'gallery', 'maker', 'books']) {
    const own = await openPage(browser);
    await signInAs(own, role);
    expect(new URL(own.url()).pathname).toBe('/');
  }
});

test('only our own scripts run: nothing on the page is stopped, and a stranger’s would be', async () => {
  const page = await openPage(browser);
  const stopped: string[] = [];
  page.on('console', (message) => {
    if (/Content Security Policy/.test(message.text())) stopped.push(message.text());
  });
  await page.goto('/sign-in');
  await signInAs(page, 'owner');
  await page.goto('/staff');
  await page.goto('/no-such-page');
  expect(stopped).toEqual([]);
  await page.evaluate(() => {
    const button = document.createElement('button');
    button.setAttribute('onclick', 'document.title = "taken over"');
    document.body.append(button);
    button.click();
  });
  expect(await page.title()).not.toBe('taken over');
  expect(stopped).not.toEqual([]);
});

test('after signing out, neither the page before nor any other is shown', async () => {
  const page = await openPage(browser);
  await signInAs(page, 'gallery');
  await page.goto('/stock');
  await page.goto('/sign-out');
  await noAxeViolations(page);
  await page.getByRole('button', { name: 'Sign out', exact: true }).click();
  await page.waitForURL('**/sign-in');
  await page.goBack();
  await page.goto('/stock');
  expect(new URL(page.url()).pathname).toBe('/sign-in');
});

test('one signs in and out without any script', async () => {
  const context = await browser.newContext({
    baseURL: inject('baseUrl'),
    javaScriptEnabled: false,
  });
  const page = await context.newPage();
  await page.goto('/stock');
  await knock(page, 'tomas', 'heron at low water');
  await page.getByText('This name and this password do not belong together').waitFor();
  await knock(page, 'tomas', 'demo-clay-gallery');
  await page.waitForURL((url) => url.pathname === '/stock');
  await page.goto('/sign-out');
  await page.getByRole('button', { name: 'Sign out', exact: true }).click();
  await page.waitForURL('**/sign-in');
});

test('the cookie is kept from scripts and from other sites', async () => {
  const page = await openPage(browser);
  await signInAs(page, 'books');
  const cookies = await page.context().cookies();
  const session = cookies.find((cookie) => cookie.name === 'next-auth.session-token');
  expect(session).toMatchObject({ httpOnly: true, sameSite: 'Lax', path: '/' });
  expect(await page.evaluate(() => document.cookie)).not.toContain('session-token');
});

test('next-auth’s own way in and out opens and ends the same session', async () => {
  const page = await openPage(browser);
  const request = page.request;
  const token: unknown = await (await request.get('/api/auth/csrf')).json();
  const { csrfToken } = token as { csrfToken: string };
  const form = { csrfToken, name: 'bettina', password: 'demo-clay-books', json: 'true' };
  await request.post('/api/auth/callback/credentials', { form });
  const session: unknown = await (await request.get('/api/auth/session')).json();
  expect(session).toMatchObject({ user: { name: 'Bettina Crake' } });
  await page.goto('/books');
  expect(new URL(page.url()).pathname).toBe('/books');
  const kept = await page.context().cookies();
  await request.post('/api/auth/signout', { form: { csrfToken, json: 'true' } });
  await page.context().addCookies(kept);
  await page.goto('/books');
  expect(new URL(page.url()).pathname).toBe('/sign-in');
});

test('a picture is kept by the browser of whoever is signed in, and shown to nobody else', async () => {
  const page = await openPage(browser);
  await signInAs(page, 'maker');
  await page.goto('/stock');
  const path = await page.locator('img[src^="/files/"]').first().getAttribute('src');
  const picture = await page.request.get(path ?? '/');
  expect(picture.status()).toBe(200);
  const headers = picture.headers();
  expect(headers['content-type']).toMatch(/^image\/(jpeg|webp)$/);
  expect(headers['cache-control']).toBe('private, max-age=31536000, immutable');
  expect(headers['x-content-type-options']).toBe('nosniff');
  const again = { headers: { 'if-none-match': headers['etag'] ?? '' } };
  expect((await page.request.get(path ?? '/', again)).status()).toBe(304);
  expect((await page.request.get('/files/not-a-file')).status()).toBe(404);

  const stranger = await openPage(browser);
  const refused = await stranger.request.get(path ?? '/', { maxRedirects: 0 });
  expect(refused.status()).toBe(303);
  expect(refused.headers()['cache-control']).toBe('no-store');
  await stranger
    .context()
    .addCookies([{ name: 'next-auth.session-token', value: 'made-up', url: inject('baseUrl') }]);
  expect((await stranger.request.get(path ?? '/')).status()).toBe(401);
});
