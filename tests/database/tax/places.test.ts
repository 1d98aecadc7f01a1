import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, test } from 'vitest';
import { keepRate, keepTaxPlace, keepTaxState, keepTreatment } from '@/lib/access/writes/tax';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { listPlacesOn, listTaxPlaces, listTreatments, readTaxSetting } from '@/lib/tax/reads';
import { taxPlaceInput, taxStateInput, treatmentInput } from '@/lib/tax/input';
import { doing, openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';

let gallery: OpenGallery;
const on: Day = '2026-11-20';

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
});

const aPlace = (over: Record<string, unknown> = {}) =>
  taxPlaceInput.parse({ requestKey: randomUUID(), name: 'Gull Point', state: 'Fenmark', ...over });
const aTreatment = (over: Record<string, unknown> = {}) =>
  treatmentInput.parse({
    ...{ requestKey: randomUUID(), state: 'WA', kind: 'shipping', treatment: 'taxed' },
    ...{ shareBy: 'by_weight', fromOn: '2026-01-01', ...over },
  });
const aState = (over: Record<string, unknown> = {}) =>
  taxStateInput.parse({
    ...{ requestKey: randomUUID(), state: 'Fenmark', registeredFrom: '', lookedUpOn: '' },
    ...{ thresholdCents: '100,000', thresholdSales: '', needs: 'either', note: '' },
    ...{ window: 'twelve_months', ...over },
  });
const owner = () => doing(gallery.owner);

async function added(over: Record<string, unknown> = {}): Promise<string> {
  const kept = await keepTaxPlace(owner(), aPlace(over));
  if (!kept.ok) throw new Error(kept.refusal.code);
  return kept.value;
}

describe('a place', () => {
  test('is kept once for its key, and who added it is written down', async () => {
    const input = aPlace();
    const both = await Promise.all([keepTaxPlace(owner(), input), keepTaxPlace(owner(), input)]);
    expect(both[0]).toEqual(both[1]);
    expect((await listTaxPlaces()).map(({ name }) => name)).toEqual([
      'Gull Point',
      'Cedar Landing',
    ]);
    expect(await sql(`select did from "AuditLine" where subject = 'TaxPlace'`)).toEqual([
      { did: 'added a tax place' },
    ]);
  });

  test.each(['clerk', 'maker', 'books'] as const)('is not kept by the %s', async (who) => {
    const kept = await keepTaxPlace(doing(gallery[who]), aPlace());
    expect(kept).toMatchObject({ refusal: { code: 'not_allowed' } });
  });

  test('has a name of its own, whatever its capitals; of two at once one is kept', async () => {
    const two = await Promise.all([
      keepTaxPlace(owner(), aPlace()),
      keepTaxPlace(owner(), aPlace({ name: 'gull point' })),
    ]);
    expect(two.filter((one) => one.ok)).toHaveLength(1);
    expect(two.find((one) => !one.ok)).toMatchObject({ refusal: { code: 'place_is_there' } });
  });

  test('gets another name and stays in its state', async () => {
    const placeId = await added();
    const renamed = { placeId, name: 'Gull Point and shore', state: 'Alderland' };
    expect(await keepTaxPlace(owner(), aPlace(renamed))).toMatchObject({ ok: true });
    const places = await listTaxPlaces();
    expect(places.find(({ id }) => id === placeId)).toMatchObject({
      ...{ name: 'Gull Point and shore', state: 'Fenmark' },
    });
  });

  test('that was kept without a state is given its own once', async () => {
    await db().taxPlace.update({ where: { id: gallery.taxPlaceId }, data: { state: '' } });
    const asked = { placeId: gallery.taxPlaceId, name: 'Cedar Landing' };
    await keepTaxPlace(owner(), aPlace({ ...asked, state: 'Alderland' }));
    await keepTaxPlace(owner(), aPlace({ ...asked, state: 'Fenmark' }));
    expect(await listTaxPlaces()).toMatchObject([{ name: 'Cedar Landing', state: 'Alderland' }]);
  });

  test('that is not there gets no name and no rate', async () => {
    const placeId = randomUUID();
    const rate = { requestKey: randomUUID(), placeId, authority: 'State', ratePercent: '5' };
    const refusal = { ok: false, refusal: { code: 'place_unknown' } };
    expect(await keepTaxPlace(owner(), aPlace({ placeId }))).toEqual(refusal);
    expect(await keepRate(owner(), { ...rate, fromOn: on })).toEqual(refusal);
  });
});

describe('registration', () => {
  const isRegistered = async (taxPlaceId: string, day = on) =>
    (await readTaxSetting(db(), { taxPlaceId, on: day })).isRegistered;

  test('holds at home without a word', async () => {
    expect(await isRegistered(gallery.taxPlaceId)).toBe(true);
  });

  test('elsewhere holds from its day on, and not before', async () => {
    const placeId = await added();
    expect(await isRegistered(placeId)).toBe(false);
    await keepTaxState(owner(), aState({ registeredFrom: '2026-11-21' }));
    expect([await isRegistered(placeId), await isRegistered(placeId, '2026-11-21')]).toEqual([
      ...[false, true],
    ]);
  });

  test('is said with the first place of a state, and a second one leaves it', async () => {
    const first = await added({ registeredFrom: '2026-01-01' });
    const second = await added({ name: 'Heron Bar', state: 'fenmark' });
    expect([await isRegistered(first), await isRegistered(second)]).toEqual([true, true]);
    expect(await sql('select state from "TaxState"')).toEqual([{ state: 'Fenmark' }]);
  });

  test('the list shows home first, and what is charged', async () => {
    await added();
    expect(await listPlacesOn(on)).toMatchObject([
      { name: 'Cedar Landing', isHome: true, isRegistered: true, parts: [{}, {}] },
      { name: 'Gull Point', isHome: false, isRegistered: false, parts: [] },
    ]);
  });

  test('the gallery’s own state is no other state', async () => {
    expect(await keepTaxState(owner(), aState({ state: 'wa' }))).toEqual({
      ok: false,
      refusal: { code: 'state_is_home', state: 'WA' },
    });
  });
});

describe('what a state taxes', () => {
  test('is read with the rates of the day', async () => {
    await keepTreatment(owner(), aTreatment());
    expect(await readTaxSetting(db(), { taxPlaceId: gallery.taxPlaceId, on })).toEqual({
      ...{ place: 'Cedar Landing', state: 'WA', isRegistered: true },
      parts: [
        { name: 'Cedar Landing', ratePercent: '1.5' },
        { name: 'State', ratePercent: '6.5' },
      ],
      treatments: [{ kind: 'shipping', treatment: 'taxed', shareBy: 'by_weight' }],
    });
    const before = await readTaxSetting(db(), { taxPlaceId: gallery.taxPlaceId, on: '2025-12-31' });
    expect([before.parts, before.treatments]).toEqual([[], []]);
  });

  test('a new one closes the one before, without a day between or in both', async () => {
    await keepTreatment(owner(), aTreatment());
    await keepTreatment(owner(), aTreatment({ treatment: 'not_taxed', fromOn: '2026-07-01' }));
    expect(await listTreatments('WA')).toMatchObject([
      { treatment: 'not_taxed', shareBy: null, fromOn: '2026-07-01', untilOn: null },
      { treatment: 'taxed', fromOn: '2026-01-01', untilOn: '2026-07-01' },
    ]);
  });

  test('is refused for a state without a place, and into days that are spoken for', async () => {
    expect(await keepTreatment(owner(), aTreatment({ state: 'Nowhere' }))).toEqual({
      ok: false,
      refusal: { code: 'state_unknown', state: 'Nowhere' },
    });
    await keepTreatment(owner(), aTreatment());
    expect(await keepTreatment(owner(), aTreatment({ fromOn: '2025-06-01' }))).toMatchObject({
      refusal: { code: 'treatment_follows_already' },
    });
  });

  test('of two at the same moment one is kept', async () => {
    const two = await Promise.all([
      keepTreatment(owner(), aTreatment()),
      keepTreatment(owner(), aTreatment({ treatment: 'not_taxed' })),
    ]);
    expect(two.filter((one) => one.ok)).toHaveLength(1);
    expect(await listTreatments('WA')).toHaveLength(1);
  });

  test.each([
    ['two at a time', `'shipping', 'taxed', null, '2026-03-01', null`, 'one_tax_treatment'],
    [
      'an end before its beginning',
      `'goods', 'taxed', null, '2026-03-01', '2026-03-01'`,
      'ends_after',
    ],
    [
      'shared pieces',
      `'goods', 'taxed', 'by_price', '2026-03-01', null`,
      'only_shipping_is_shared',
    ],
  ])('the database itself takes no %s', async (_label, values, name) => {
    await keepTreatment(owner(), aTreatment());
    const write = sql(
      `insert into "TaxTreatment" (id, state, kind, treatment, "shareBy", "fromOn", "untilOn")
       values ('${randomUUID()}', 'WA', ${values})`,
    );
    await expect(write).rejects.toThrow(name);
  });
});
