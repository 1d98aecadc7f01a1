import { readFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, inject, test } from 'vitest';
import { askOutside } from '../helpers/launches';
import { root } from '../helpers/server';
import { cookieOf, visit } from '../helpers/visits';

const photo = readFileSync(join(root, 'tests/rules/files/pictures/large.heic'));
const edge = '----kiln-edge-of-a-part';

/** The form that logs a request, as a browser without scripts sends it. */
async function aForm(cookie: string, title: string): Promise<Buffer> {
  const page = await (await visit('/commissions/new', { headers: { cookie } })).text();
  const [form] = page.match(/<form[^>]*aria-label="Open a commission".*?<\/form>/s) ?? [];
  const hidden = [...(form ?? '').matchAll(/<input[^>]*type="hidden"[^>]*>/g)].map(([input]) => [
    ...[/name="([^"]*)"/.exec(input)?.[1], /value="([^"]*)"/.exec(input)?.[1]],
  ]);
  const fields = [...hidden, ['title', title], ['newName', 'Odile Farrant']].map(
    ([name, value]) =>
      `--${edge}\r\nContent-Disposition: form-data; name="${name}"\r\n\r\n${plain(value ?? '')}\r\n`,
  );
  const file = `--${edge}\r\nContent-Disposition: form-data; name="pictures"; filename="wall.heic"\r\nContent-Type: image/heic\r\n\r\n`;
  return Buffer.concat([
    Buffer.from(fields.join('') + file),
    ...[photo, Buffer.from(`\r\n--${edge}--\r\n`)],
  ]);
}

function plain(attribute: string): string {
  return attribute.replaceAll('&quot;', '"').replaceAll('&amp;', '&');
}

/** Sends a part of a form, says that all of it is coming, and hangs up. */
async function sendAndHangUp(cookie: string, form: Buffer, share: number): Promise<void> {
  const { hostname, port } = new URL(inject('baseUrl'));
  const sending = request({
    ...{ hostname, port, path: '/commissions/new', method: 'POST' },
    headers: { ...headersOf(cookie), 'content-length': form.byteLength },
  });
  sending.on('error', () => undefined);
  sending.write(form.subarray(0, Math.floor(form.byteLength * share)));
  await pause(400);
  sending.destroy();
  await pause(1_500);
}

function headersOf(cookie: string) {
  const type = `multipart/form-data; boundary=${edge}`;
  return { cookie, origin: inject('baseUrl'), 'content-type': type };
}

function counts(): Promise<unknown[]> {
  return askOutside(
    inject('dataDir'),
    `select (select count(*) from "Commission") as commissions,
       (select count(*) from "StoredFile") as files, (select count(*) from "Collector") as people,
       (select count(*) from "CommandKey") as keys`,
  );
}

test('an upload cut off on the way leaves nothing behind, and the next one goes through', async () => {
  const cookie = await cookieOf('maker');
  const form = await aForm(cookie, 'Cut off on the way');
  const before = await counts();
  for (const share of [0.1, 0.6, 0.99]) await sendAndHangUp(cookie, form, share);
  expect(await counts()).toEqual(before);
  const whole = await visit('/commissions/new', {
    ...{ method: 'POST', headers: headersOf(cookie), body: Uint8Array.from(form) },
  });
  expect(whole.headers.get('location')).toMatch(/\/commissions\/\d+\?done=logged$/);
  expect(await counts()).not.toEqual(before);
});
