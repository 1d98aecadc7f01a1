import { randomUUID } from 'node:crypto';
import { beforeEach, expect, test } from 'vitest';
import { hasStaff } from '@/lib/access/reads';
import { finishFirstRun, keepGallery } from '@/lib/access/writes/set-up';
import { keepRate, stopRate } from '@/lib/access/writes/tax';
import type { Actor } from '@/lib/access/rules';
import { findGallery, getGallery } from '@/lib/platform/settings';
import { listRates } from '@/lib/tax/reads';
import { sql, startAfresh } from '../../helpers/database';
import { aFirstRun, beginning, by, done, openGallery, takeOn } from './people';

const from = { at: beginning, device: 'Firefox on Linux' };
const key = () => ({ requestKey: randomUUID() });

beforeEach(startAfresh);

test('the first run makes the gallery, its places, its rates and its owner', async () => {
  expect(await hasStaff()).toBe(false);
  done(await finishFirstRun(aFirstRun({ authority2: 'Inlet County', rate2: '1.25' }), from));
  const gallery = await getGallery();
  expect(gallery).toMatchObject({
    ...{ name: 'Saltwood Relief', timeZone: 'America/Los_Angeles', isDemo: false },
  });
  expect(await listRates(gallery.taxPlaceId)).toMatchObject([
    { authority: 'Inlet County', ratePercent: '1.25', fromOn: '2026-11-25', untilOn: null },
    { authority: 'State of Alderland', ratePercent: '5.5', fromOn: '2026-11-25', untilOn: null },
  ]);
  expect(await sql('select name from "Place"')).toEqual([{ name: 'Gallery floor' }]);
  expect(await hasStaff()).toBe(true);
});

test('rates begin on the day it is at the gallery, not in Greenwich', async () => {
  done(await finishFirstRun(aFirstRun(), { ...from, at: new Date('2026-11-26T03:00:00Z') }));
  const rates = await listRates((await getGallery()).taxPlaceId);
  expect(rates.map((rate) => rate.fromOn)).toEqual(['2026-11-25']);
});

test('of several first runs at the same moment one wins, and the others leave nothing', async () => {
  const names = ['maren', 'tomas', 'oriel', 'bettina'];
  const runs = names.map((signInName) => finishFirstRun(aFirstRun({ signInName }), from));
  const codes = (await Promise.all(runs)).map((run) => (run.ok ? 'ok' : run.refusal.code));
  expect(codes.toSorted()).toEqual([...Array.from({ length: 3 }, () => 'already_set_up'), 'ok']);
  const counts = await sql(`select (select count(*)::int from "Staff") as staff,
    (select count(*)::int from "Place") as places, (select count(*)::int from "TaxPlace") as tax`);
  expect(counts).toEqual([{ staff: 1, places: 1, tax: 1 }]);
});

test('a first run that is refused at its last step leaves nothing behind', async () => {
  const input = aFirstRun({ rate1: '60', authority2: 'Inlet County', rate2: '40' });
  expect(await finishFirstRun(input, from)).toEqual({
    ok: false,
    refusal: { code: 'rates_above_hundred', togetherPercent: '100' },
  });
  expect(await findGallery()).toBeNull();
  expect(await sql('select 1 from "Place" union all select 1 from "TaxPlace"')).toEqual([]);
});

test('a weak password is refused before anything else', async () => {
  expect(await finishFirstRun(aFirstRun({ password: 'maren tidewell' }), from)).toEqual({
    ok: false,
    refusal: { code: 'password_is_the_name' },
  });
});

const settings = {
  name: 'Saltwood Relief',
  tagline: 'Clay from a wet coast',
  street: '14 Skiff Lane',
  city: 'Harrow Inlet',
  state: 'Alderland',
  postcode: '00014',
  phone: '',
  email: '',
  lengthUnit: 'mm' as const,
  roundTaxBy: 'item' as const,
};

async function opened(): Promise<{ owner: Actor; taxPlaceId: string }> {
  const { owner } = await openGallery();
  return { owner, taxPlaceId: (await getGallery()).taxPlaceId };
}

test('the owner keeps how the gallery works, and who changed it is written down', async () => {
  const { owner } = await opened();
  done(await keepGallery(by(owner), { ...key(), ...settings }));
  expect(await getGallery()).toMatchObject(settings);
  const lines = await sql(
    `select did, facts->>'roundTaxBy' as basis from "AuditLine" where subject = 'Gallery' order by id`,
  );
  expect(lines.at(-1)).toEqual({ did: 'changed how the gallery works', basis: 'item' });
});

test('nobody else changes the gallery or its rates', async () => {
  const { owner, taxPlaceId } = await opened();
  const tomas = await takeOn(owner, 'tomas', ['gallery', 'maker', 'books']);
  const [rate] = await listRates(taxPlaceId);
  const rateId = rate?.id ?? '';
  const mine = { placeId: taxPlaceId, authority: 'Mine', ratePercent: '1' };
  const answers = await Promise.all([
    keepGallery(by(tomas), { ...key(), ...settings }),
    keepRate(by(tomas), { ...key(), ...mine, fromOn: '2026-12-01' }),
    stopRate(by(tomas), { ...key(), rateId, untilOn: '2026-12-01' }),
  ]);
  const refusal = { code: 'not_allowed', permission: 'settings.keep' };
  for (const answer of answers) expect(answer).toEqual({ ok: false, refusal });
  expect(await listRates(taxPlaceId)).toEqual([rate]);
});

test('a new rate closes the one before it, without a day between or in both', async () => {
  const { owner, taxPlaceId } = await opened();
  const rate = { placeId: taxPlaceId, authority: 'State of Alderland', ratePercent: '5.75' };
  done(await keepRate(by(owner), { ...key(), ...rate, fromOn: '2027-01-01' }));
  expect(await listRates(taxPlaceId)).toMatchObject([
    { ratePercent: '5.75', fromOn: '2027-01-01', untilOn: null },
    { ratePercent: '5.5', fromOn: '2026-11-25', untilOn: '2027-01-01' },
  ]);
});

test('a rate that ended is not ended again', async () => {
  const { owner, taxPlaceId } = await opened();
  const [rate] = await listRates(taxPlaceId);
  const rateId = rate?.id ?? '';
  const early = { ...key(), rateId, untilOn: '2026-11-25' as const };
  expect(await stopRate(by(owner), early)).toMatchObject({
    refusal: { code: 'rate_ends_before_it_begins' },
  });
  done(await stopRate(by(owner), { ...key(), rateId, untilOn: '2026-12-01' }));
  expect(await stopRate(by(owner), { ...key(), rateId, untilOn: '2026-12-05' })).toMatchObject({
    refusal: { code: 'rate_unknown' },
  });
});

test('of two new rates of one authority at the same moment, one is kept', async () => {
  const { owner, taxPlaceId } = await opened();
  const state = { placeId: taxPlaceId, authority: 'State of Alderland' };
  const rate = { ...state, fromOn: '2027-01-01' as const };
  const answers = await Promise.all([
    keepRate(by(owner), { ...key(), ...rate, ratePercent: '6' }),
    keepRate(by(owner), { ...key(), ...rate, ratePercent: '7' }),
  ]);
  expect(answers.filter((answer) => answer.ok)).toHaveLength(1);
  expect(await listRates(taxPlaceId)).toHaveLength(2);
});

test('the database itself lets no two rates of an authority hold on one day', async () => {
  const { taxPlaceId } = await opened();
  const write = sql(
    `insert into "TaxRate" (id, "placeId", authority, "ratePercent", "fromOn")
     values ($1, $2, 'State of Alderland', 1, '2027-01-01')`,
    [randomUUID(), taxPlaceId],
  );
  await expect(write).rejects.toThrow('one_tax_rate_at_a_time');
});
