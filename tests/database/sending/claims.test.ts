import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { claimEventInput, claimInput } from '@/lib/sending/input/claims';
import { conditionInput, marksInput } from '@/lib/sending/input/condition';
import { findShipment, listOpenClaims, listShipments } from '@/lib/sending/reads/shipments';
import { noteClaim, openClaim } from '@/lib/sending/writes/claims';
import { reportCondition, setMarks } from '@/lib/sending/writes/condition';
import { noteWay } from '@/lib/sending/writes/way';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { aPicture, done } from '@/tests/database/commissions/a-commission';
import { doing, openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { aSent, aShipment, became, packer, today } from './a-shipment';

let gallery: OpenGallery;
let termsId: string;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  const terms = await db().carrierRule.create({
    data: {
      ...{ name: 'Test freight', isFreight: true, reportDays: 5, claimDays: 270, at: new Date() },
      holdsFromOn: new Date('2026-01-01'),
    },
  });
  termsId = terms.id;
});

const picture = async (shade: number) => new File([await aPicture(shade)], 'picture.png');

const report = (shipmentId: string, fields: Record<string, unknown> = {}) =>
  conditionInput.parse({
    ...{ requestKey: randomUUID(), shipmentId, when: 'in', on: today },
    ...{ words: 'Two chips at the edge of part 9.', ...fields },
  });

const marks = (viewId: string, fields: Record<string, string> = {}) =>
  marksInput.parse({
    ...{ requestKey: randomUUID(), viewId, spotX1: '250', spotY1: '900', spotWords1: 'a chip' },
    ...fields,
  });

describe('how it looked', () => {
  test('is written with pictures, and marked where it was touched', async () => {
    const { shipmentId, number } = await aSent(gallery);
    const pictures = [await picture(20), await picture(40)];
    const { reportId } = done(
      await reportCondition(packer(gallery), report(shipmentId, { pictures })),
    );
    const [first] = (await findShipment(gallery.maker, number))?.reports ?? [];
    expect(first).toMatchObject({ id: reportId, when: 'in', by: 'Tobias Fenn' });
    const viewId = first?.views[1]?.id ?? '';
    done(
      await setMarks(
        packer(gallery),
        marks(viewId, { spotX3: '0', spotY3: '1000', spotWords3: 'b' }),
      ),
    );
    done(await setMarks(packer(gallery), marks(viewId, { spotWords1: 'later' })));
    const [after] = (await findShipment(gallery.maker, number))?.reports ?? [];
    expect(after?.views.map((view) => view.marks.map(({ words }) => words))).toEqual([
      [],
      ['a chip', 'b', 'later'],
    ]);
  });

  test('what came and was looked at asks for nothing more', async () => {
    const { shipmentId, number } = await aSent(gallery);
    done(await noteWay(packer(gallery), became(shipmentId, 'arrived')));
    const asks = async () =>
      (await listShipments(gallery.maker, today)).find((each) => each.number === number)?.asks;
    expect(await asks()).toBe('look_at_it');
    done(await reportCondition(packer(gallery), report(shipmentId)));
    expect(await asks()).toBe('nothing');
  });

  test('refuses a day to come, what is no picture, too many of them, no such shipment', async () => {
    const { shipmentId } = await aShipment(gallery);
    const nine = await Promise.all(Array.from({ length: 9 }, (_, at) => picture(at)));
    const tried = [
      report(shipmentId, { on: '2026-11-21' }),
      report(shipmentId, { pictures: new File(['no picture'], 'x.png') }),
      report(shipmentId, { pictures: nine }),
      report(randomUUID()),
    ];
    const codes: string[] = [];
    for (const form of tried) {
      const answer = await reportCondition(packer(gallery), form);
      codes.push(answer.ok ? 'written' : answer.refusal.code);
    }
    expect(codes).toEqual([
      ...['day_to_come', 'picture_not_kept', 'too_many_pictures', 'no_such_shipment'],
    ]);
  });

  test.each([
    ['no such picture', {}, 'no_such_view'],
    ['words without a place', { spotX1: '', spotY1: '' }, 'mark_without_place'],
    ['a place without words', { spotWords1: ' ' }, 'mark_without_words'],
    ['nothing', { spotX1: '', spotY1: '', spotWords1: '' }, 'no_marks'],
  ])('marks refuse %s', async (_label, fields, code) => {
    const { shipmentId, number } = await aSent(gallery);
    const pictures = await picture(60);
    done(await reportCondition(packer(gallery), report(shipmentId, { pictures })));
    const shipment = await findShipment(gallery.maker, number);
    const viewId = shipment?.reports[0]?.views[0]?.id ?? '';
    const asked = marks(code === 'no_such_view' ? randomUUID() : viewId, fields);
    expect(await setMarks(packer(gallery), asked)).toMatchObject({ refusal: { code } });
  });

  test('a mark outside the picture does not read, and the database has none', async () => {
    expect(() => marks(randomUUID(), { spotX1: '1001' })).toThrow();
    const data = { viewId: randomUUID(), position: 1, x: 1001, y: 0, words: 'out' };
    await expect(db().conditionMark.create({ data })).rejects.toSatisfy(
      (error) => constraintOf(error) === 'mark_is_on_the_picture',
    );
  });
});

const claim = (shipmentId: string, fields: Record<string, unknown> = {}) =>
  claimInput.parse({
    ...{ requestKey: randomUUID(), shipmentId, foundOn: '2026-11-19' },
    ...{ words: 'Part 9 broken', asked: '620', ...fields },
  });
const came = (claimId: string, kind: string, fields: Record<string, string> = {}) =>
  claimEventInput.parse({ requestKey: randomUUID(), claimId, kind, on: today, ...fields });

async function aClaim() {
  const { shipmentId, number } = await aSent(gallery, { carrierRuleId: termsId });
  done(await noteWay(packer(gallery), became(shipmentId, 'arrived', { on: '2026-11-18' })));
  const form = claim(shipmentId, { pictures: [await picture(80)] });
  const { claimNumber } = done(await openClaim(packer(gallery), form));
  const shipment = await findShipment(gallery.maker, number);
  const told = shipment?.claims.find((each) => each.number === claimNumber);
  if (!told) throw new Error('the claim stands on the sheet');
  return { shipmentId, number, claim: told };
}

describe('a claim', () => {
  test('keeps its last days by the carrier’s terms, and its pictures', async () => {
    const { claim: told } = await aClaim();
    expect(told).toMatchObject({
      ...{ reportByOn: '2026-11-23', claimByOn: '2027-08-09', askedCents: 62_000n },
      stage: 'to_tell',
    });
    expect(told.pictures).toHaveLength(1);
  });

  test('told, claimed and paid; then it stands in the list no longer', async () => {
    const { number, claim: told } = await aClaim();
    const open = async () =>
      (await listOpenClaims(gallery.maker)).some((each) => each.number === told.number);
    expect(await open()).toBe(true);
    done(await noteClaim(packer(gallery), came(told.id, 'told', { words: 'by telephone' })));
    done(await noteClaim(packer(gallery), came(told.id, 'claimed')));
    done(await noteClaim(packer(gallery), came(told.id, 'paid', { amount: '500' })));
    const after = (await findShipment(gallery.maker, number))?.claims.at(-1);
    expect(after).toMatchObject({ stage: 'paid' });
    expect(after?.events.map(({ kind, amountCents }) => [kind, amountCents])).toEqual([
      ['told', 0n],
      ['claimed', 0n],
      ['paid', 50_000n],
    ]);
    expect(await open()).toBe(false);
  });

  test.each([
    ['claimed', {}, 'not_told_yet'],
    ['paid', { amount: '5' }, 'not_claimed_yet'],
    ['told', { amount: '5' }, 'amount_for_nothing'],
    ['told', { on: '2026-11-18' }, 'before_found'],
    ['told', { on: '2026-11-21' }, 'claim_day_to_come'],
  ])('%s with %j is refused', async (kind, fields, code) => {
    const { claim: told } = await aClaim();
    const refused = await noteClaim(packer(gallery), came(told.id, kind, fields));
    expect(refused).toMatchObject({ refusal: { code } });
  });

  test('refuses what has not left, what was found before, no such claim, and the books', async () => {
    const { shipmentId: here } = await aShipment(gallery);
    const { shipmentId: gone } = await aSent(gallery);
    const codes = [
      await openClaim(packer(gallery), claim(here)),
      await openClaim(packer(gallery), claim(gone, { foundOn: '2026-11-11' })),
      await openClaim(packer(gallery), claim(randomUUID())),
      await noteClaim(packer(gallery), came(randomUUID(), 'told')),
      await openClaim(doing(gallery.books), claim(gone)),
    ].map((answer) => (answer.ok ? 'written' : answer.refusal.code));
    expect(codes).toEqual([
      ...['not_sent_yet', 'found_before_sent', 'no_such_shipment', 'no_such_claim'],
      'not_allowed',
    ]);
  });

  test.each([
    [{ asked: '0' }],
    [{ asked: '-5' }],
    [{ asked: 'all' }],
    [{ words: '' }],
    [{ foundOn: '' }],
  ])('%j does not read', (fields) => {
    expect(() => claim(randomUUID(), fields)).toThrow();
  });

  test('two who tell the carrier at once tell it once', async () => {
    const { claim: told } = await aClaim();
    const answers = await Promise.all([
      noteClaim(packer(gallery), came(told.id, 'told')),
      noteClaim(packer(gallery), came(told.id, 'told')),
    ]);
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
    expect(await db().claimEvent.count({ where: { claimId: told.id } })).toBe(1);
  });

  test('the same touch twice opens one claim', async () => {
    const { shipmentId } = await aSent(gallery);
    const form = claim(shipmentId);
    const both = [await openClaim(packer(gallery), form), await openClaim(packer(gallery), form)];
    expect(both[0]).toEqual(both[1]);
    expect(await db().damageClaim.count({ where: { shipmentId } })).toBe(1);
  });

  test('the database pays something, or nothing was paid', async () => {
    const { claim: told } = await aClaim();
    const event = { claimId: told.id, on: new Date('2026-11-20'), at: new Date() } as const;
    const by = { staffId: gallery.maker.id };
    const tries = [
      db().claimEvent.create({ data: { ...event, ...by, kind: 'paid', amountCents: 0n } }),
      db().claimEvent.create({ data: { ...event, ...by, kind: 'told', amountCents: 5n } }),
    ];
    for (const tried of tries) {
      await expect(tried).rejects.toSatisfy(
        (error) => constraintOf(error) === 'claim_pays_something',
      );
    }
  });
});
