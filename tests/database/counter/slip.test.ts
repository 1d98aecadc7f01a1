import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, test } from 'vitest';
import { holdPieces } from '@/lib/holds/writes';
import { listSlipsAside } from '@/lib/counter/reads/aside';
import { putOnSlip, sellSlip, throwSlipAway } from '@/lib/counter/writes';
import { inTransaction } from '@/lib/platform/db/transaction';
import { db } from '@/lib/platform/db/client';
import { startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  doing,
  later,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '../sales/open-gallery';
import { aCollector, aSlipWith, change, sellIt, slipNow, toldBy } from './a-counter';

let gallery: OpenGallery;
let tern: TestPiece;
let fern: TestPiece;

const here = { title: 'Tern over Shoals', priceCents: 18_000n, here: 1 };

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  tern = await aPieceHere(gallery, { ...here, sku: 'TS-10-CI' });
  fern = await aPieceHere(gallery, {
    ...{ sku: 'SF-08-MW', title: 'Sword Fern', priceCents: 9_650n, here: 20 },
  });
});

const piece = ({ skuId }: TestPiece, quantity = 1) => ({ kind: 'piece', skuId, quantity }) as const;
const clerk = (seconds = 0) => doing(gallery.clerk, later(seconds));

describe('a slip on several devices', () => {
  test('two scans at once are both on it, with or without a slip before them', async () => {
    const slipId = randomUUID();
    const scans = [tern, fern, fern].map((each) =>
      putOnSlip(clerk(), { requestKey: randomUUID(), slipId, line: piece(each) }),
    );
    expect((await Promise.all(scans)).map(toldBy)).toEqual(['done', 'done', 'done']);
    const { content } = await slipNow(slipId);
    expect(content.lines.map((line) => 'quantity' in line && line.quantity).toSorted()).toEqual([
      1, 2,
    ]);
  });

  test('the same scan sent twice is one piece', async () => {
    const slipId = randomUUID();
    const scan = { requestKey: randomUUID(), slipId, line: piece(fern) };
    const both = await Promise.all([putOnSlip(clerk(), scan), putOnSlip(clerk(), scan)]);
    expect(both[0]).toEqual(both[1]);
    expect((await slipNow(slipId)).content.lines).toMatchObject([{ quantity: 1 }]);
  });

  test('whoever changes an older state is told, and nothing is written over', async () => {
    const slipId = await aSlipWith(clerk(), piece(fern));
    const { version, content } = await slipNow(slipId);
    const more = { does: 'more', lineId: content.lines[0]?.id ?? '' } as const;
    const both = await Promise.all([
      change(clerk(), slipId, more, version),
      change(doing(gallery.second), slipId, more, version),
    ]);
    expect(both.map(toldBy).toSorted()).toEqual(['done', 'slip_changed_meanwhile']);
    expect((await slipNow(slipId)).content.lines).toMatchObject([{ quantity: 2 }]);
    const stale = { slipVersion: version };
    expect(toldBy(await sellIt(clerk(), slipId, 20_844n, stale))).toBe('slip_changed_meanwhile');
  });

  test('a slip that was sold is told with its receipt, and takes nothing more', async () => {
    const slipId = await aSlipWith(clerk(), piece(fern));
    const sold = await sellIt(clerk(), slipId, 10_422n);
    const number = sold.ok ? sold.value.number : 0;
    const again = { ok: false, refusal: { code: 'slip_sold_already', number } };
    expect(await sellIt(clerk(), slipId, 10_422n)).toEqual(again);
    const put = { requestKey: randomUUID(), slipId, line: piece(fern) };
    expect(await putOnSlip(clerk(), put)).toEqual(again);
    expect(toldBy(await throwSlipAway(clerk(), slipId))).toBe('slip_sold_already');
  });

  test('sold twice at once with two keys it is one sale', async () => {
    const slipId = await aSlipWith(clerk(), piece(fern));
    const { version: slipVersion } = await slipNow(slipId);
    const paid = { slipId, slipVersion, expectedTotalCents: 10_422n };
    const tenders = [{ kind: 'cash', givenCents: null }] as const;
    const tries = await Promise.all(
      [1, 2].map(() => sellSlip(clerk(), { ...paid, tenders, requestKey: randomUUID() })),
    );
    expect(tries.map(toldBy).toSorted()).toEqual(['done', 'slip_sold_already']);
    expect(await db().sale.count()).toBe(1);
  });
});

describe('set aside', () => {
  test('is listed with who, what and how much, taken up, and thrown away', async () => {
    const slipId = await aSlipWith(clerk(), piece(fern, 2));
    await change(clerk(), slipId, { does: 'aside', asideAs: 'green coat, back at four' });
    const [waiting] = await listSlipsAside(doing(gallery.second, later(60)));
    expect(waiting).toMatchObject({
      ...{ asideAs: 'green coat, back at four', staffName: 'Perrin Oday' },
      ...{ titles: ['Sword Fern'], totalCents: 20_844n },
    });
    const taken = await change(doing(gallery.second), slipId, { does: 'aside', asideAs: null });
    expect(toldBy(taken)).toBe('done');
    expect(toldBy(await throwSlipAway(clerk(), slipId))).toBe('done');
    expect(toldBy(await throwSlipAway(clerk(), slipId))).toBe('slip_thrown_away');
    expect(await listSlipsAside(clerk())).toEqual([]);
  });

  test('what nobody touched for thirty days is not listed', async () => {
    await aSlipWith(clerk(), piece(fern));
    const days = (count: number) => doing(gallery.clerk, later(count * 86_400));
    expect(await listSlipsAside(days(29))).toHaveLength(1);
    expect(await listSlipsAside(days(31))).toHaveLength(0);
  });

  test('a card’s number among its words is not kept', async () => {
    const slipId = await aSlipWith(clerk(), piece(fern));
    const asideAs = 'pays with 4111 1111 1111 1111';
    expect(toldBy(await change(clerk(), slipId, { does: 'aside', asideAs }))).toBe(
      'card_number_typed',
    );
    const row = await db().slip.findUniqueOrThrow({ where: { id: slipId } });
    expect(JSON.stringify(row)).not.toContain('4111');
  });
});

describe('what is held', () => {
  async function heldFor(collectorId: string | null): Promise<string> {
    const held = await inTransaction((tx) =>
      holdPieces(tx, clerk(), {
        ...{ skuId: tern.skuId, placeId: gallery.counterId, quantity: 1, editionNumber: null },
        ...{ forWhom: 'Odile Sefton', phone: '', collectorId, note: '', untilAt: later(86_400) },
      }),
    );
    if (!held.ok) throw new Error('The tern is free to be held.');
    return held.value.holdId;
  }

  test('is not sold to another, with whose it is; a lapsed one still is not', async () => {
    await heldFor(null);
    const slipId = await aSlipWith(clerk(), piece(tern));
    expect(await sellIt(clerk(), slipId, 19_440n)).toMatchObject({
      refusal: { code: 'held_for_another', forWhom: 'Odile Sefton', hasLapsed: false },
    });
    const after = { actor: gallery.clerk, at: later(2 * 86_400) };
    expect(await sellIt(after, slipId, 19_440n)).toMatchObject({
      refusal: { code: 'held_for_another', hasLapsed: true },
    });
    expect(await db().sale.count()).toBe(0);
  });

  test('goes to whom it is held for, and the hold ends as sold', async () => {
    const odile = await aCollector('Odile Sefton');
    const holdId = await heldFor(odile);
    const slipId = await aSlipWith(clerk(), piece(tern), odile);
    expect(toldBy(await sellIt(clerk(), slipId, 19_440n))).toBe('done');
    const hold = await db().hold.findUniqueOrThrow({ where: { id: holdId } });
    expect(hold.endedHow).toBe('sold');
  });

  test('goes onto a slip by its hold, without a name', async () => {
    const holdId = await heldFor(null);
    const slipId = await aSlipWith(clerk(), { ...piece(tern), holdIds: [holdId] });
    expect(toldBy(await sellIt(clerk(), slipId, 19_440n))).toBe('done');
  });
});
