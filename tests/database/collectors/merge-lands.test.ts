import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import {
  addressInput,
  consentInput,
  noteInput,
  ownedInput,
  personInput,
} from '@/lib/collectors/input/card';
import { mergeInput } from '@/lib/collectors/input/merge';
import { certificateInput, tradeTermsInput } from '@/lib/collectors/input/trade';
import { keepAddress, keepNote, keepPerson, sayConsent } from '@/lib/collectors/writes/card';
import { mergeCollectors } from '@/lib/collectors/writes/merge';
import { keepOwned } from '@/lib/collectors/writes/owned';
import { keepCertificate, setTradeTerms } from '@/lib/collectors/writes/trade';
import { beginWithGallery } from '@/lib/consignment/writes';
import { putOnSlip } from '@/lib/counter/writes';
import { holdPieces } from '@/lib/holds/writes';
import { giveStep } from '@/lib/holds/writes/approvals';
import { waitForPiece } from '@/lib/holds/writes/waiting';
import { beginLayaway } from '@/lib/layaway/writes';
import { takeOrderInput } from '@/lib/orders/input';
import { takeOrder } from '@/lib/orders/writes/take-order';
import { db } from '@/lib/platform/db/client';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import type { Result } from '@/lib/platform/result';
import { ok } from '@/lib/platform/result';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { openStoreCredit } from '@/lib/vouchers/writes/open-store-credit';
import { promiseTownInput } from '@/lib/wholesale/input';
import { keepShopOrder } from '@/lib/wholesale/writes';
import { promiseTown } from '@/lib/wholesale/writes/promises';
import { asked as askedCommission, done } from '@/tests/database/commissions/a-commission';
import { asked as askedLayaway } from '@/tests/database/layaway/a-layaway';
import {
  aPieceHere,
  doing,
  later,
  noon,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '@/tests/database/sales/open-gallery';
import { anOrder } from '@/tests/database/wholesale/a-shop';
import { sql, startAfresh } from '@/tests/helpers/database';
import { startStep } from '@/lib/sending/writes/shipments';
import { toStart } from '@/tests/database/sending/a-shipment';
import { fieldsThatName } from './fields-that-name';

let gallery: OpenGallery;
let piece: TestPiece;
let kept: string;
/** The one that was laid into the other; every act below is asked for in their name. */
let gone: string;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  const tern = { sku: 'TERN-1', title: 'Tern', priceCents: 10_000n, here: 20 };
  piece = await aPieceHere(gallery, tern);
  const where = { kind: 'business', city: 'Fernhollow', state: 'WA', createdAt: noon } as const;
  const add = async (name: string) =>
    (await db().collector.create({ data: { name, ...where } })).id;
  [kept, gone] = [await add('Saltgrass Rooms'), await add('Salt Grass Rooms')];
  const both = { oneId: kept, otherId: gone, keep: kept };
  const form = mergeInput.parse({ requestKey: randomUUID(), ...both });
  done(await mergeCollectors(doing(gallery.clerk), form));
});

const clerk = () => doing(gallery.clerk);
const owner = () => doing(gallery.owner);
const form = () => ({ requestKey: randomUUID(), collectorId: gone });
const step = async (work: (tx: Tx) => Promise<Result<unknown, { code: string }>>) =>
  done(
    await inTransaction<null, { code: string }>(async (tx) => {
      const result = await work(tx);
      return result.ok ? ok(null) : result;
    }),
  );

async function sellToGone() {
  const sums = { netCents: 100n, taxCents: 0n, totalCents: 100n, taxes: [] };
  const line = {
    ...{ kind: 'typed' as const, skuId: null, designId: null, title: 'A tile', what: '' },
    ...{ quantity: 1, unitPriceCents: 100n, discountCents: 0n, netCents: 100n },
    ...{ taxable: false, taxKind: 'none' as const, taxableCents: 0n, taxCents: 0n },
    unitCostCents: null,
  };
  await step(async (tx) =>
    ok(
      await recordSales(tx, clerk(), [
        {
          ...{ ...sums, lines: [line], channel: 'counter', soldOn: '2026-11-20' },
          ...{ placeId: gallery.counterId, taxPlaceId: gallery.taxPlaceId, collectorId: gone },
          tenders: [{ kind: 'on_account', amountCents: 100n, givenCents: null, reference: '' }],
          referredById: gone,
        },
      ]),
    ),
  );
}

const holding = () => ({
  ...{ skuId: piece.skuId, placeId: gallery.counterId, quantity: 1, editionNumber: null },
  ...{ collectorId: gone, forWhom: 'Saltgrass', phone: '', note: '', untilAt: later(86_400) },
});

/** Every act by which a row comes to name somebody, and the fields that it writes. */
const acts: [string, () => Promise<unknown>][] = [
  ['Sale.collectorId Sale.referredById Posting.collectorId', sellToGone],
  [
    'Shipment.collectorId',
    () => step((tx) => startStep(tx, clerk(), toStart({ collectorId: gone }))),
  ],
  ['Hold.collectorId', () => step((tx) => holdPieces(tx, clerk(), holding()))],
  [
    'Waiting.collectorId',
    async () => {
      const waits = { what: 'back_again' as const, forWhom: '', phone: '', note: '' };
      done(await waitForPiece(clerk(), { ...form(), skuId: piece.skuId, ...waits }));
    },
  ],
  [
    'OnApproval.collectorId',
    () =>
      step((tx) =>
        giveStep(tx, clerk(), {
          ...{ collectorId: gone, dueOn: '2026-11-27', valueCents: 100n, pictures: [] },
          ...{ chosen: [{ code: piece.sku, quantity: 1, editionNumber: null }] },
          ...{ condition: '', security: '' },
        }),
      ),
  ],
  [
    'Layaway.collectorId Hold.collectorId',
    async () => {
      const layaway = { shownNet: '100.00', down: '27.00' };
      done(await beginLayaway(clerk(), askedLayaway(piece.sku, gone, layaway)));
    },
  ],
  [
    'Slip.collectorId',
    async () => {
      const line = { kind: 'piece' as const, skuId: piece.skuId, quantity: 1 };
      done(await putOnSlip(clerk(), { ...form(), slipId: null, line }));
    },
  ],
  [
    'Credit.collectorId',
    async () => done(await openStoreCredit(owner(), { ...form(), amount: 500n, why: 'a scratch' })),
  ],
  [
    'SpecialOrder.collectorId',
    async () => {
      const wish = { skuId: piece.skuId, quantity: '1', technique: 'slip_cast', goes: 'collected' };
      const more = { said: 'yes', readyAboutOn: '2027-01-15' };
      done(await takeOrder(clerk(), takeOrderInput.parse({ ...form(), ...wish, ...more })));
    },
  ],
  [
    'Commission.collectorId',
    () => askedCommission(gallery.maker, '2026-11-03', { collectorId: gone, newName: '' }),
  ],
  [
    'WholesaleOrder.collectorId',
    async () => done(await keepShopOrder(clerk(), anOrder(gone, `${piece.sku} 2`))),
  ],
  [
    'TownPromise.collectorId',
    async () => {
      const town = { shopId: gone, town: 'Fernhollow', state: 'WA', fromOn: '2026-11-20' };
      const asked = { requestKey: randomUUID(), ...town, untilOn: '' };
      done(await promiseTown(clerk(), promiseTownInput.parse(asked)));
    },
  ],
  [
    'Consignee.collectorId',
    async () => {
      const terms = { sharePercent: '40', payDays: 30, terms: '', sinceOn: '2026-01-01' } as const;
      done(await beginWithGallery(owner(), { ...form(), ...terms }));
    },
  ],
  [
    'ResaleCertificate.collectorId',
    async () => {
      const paper = { state: 'WA', permitNumber: '4471', legalName: 'Saltgrass' };
      const asked = { ...form(), ...paper, fromOn: '2026-01-01', untilOn: '' };
      done(await keepCertificate(clerk(), certificateInput.parse(asked)));
    },
  ],
  [
    'TradeTerms.collectorId',
    async () => {
      const terms = { way: 'discount', percent: '15', sinceOn: '2026-01-01' };
      done(await setTradeTerms(owner(), tradeTermsInput.parse({ ...form(), ...terms })));
    },
  ],
  [
    'CollectorPerson.collectorId',
    async () => done(await keepPerson(clerk(), personInput.parse({ ...form(), name: 'June' }))),
  ],
  [
    'CollectorAddress.collectorId',
    async () => {
      const address = { label: 'The mill', street: '1 Weir Road', city: 'Fernhollow' };
      done(await keepAddress(clerk(), addressInput.parse({ ...form(), ...address })));
    },
  ],
  [
    'CollectorNote.collectorId',
    async () => done(await keepNote(clerk(), noteInput.parse({ ...form(), words: 'Loves ferns' }))),
  ],
  [
    'Consent.collectorId',
    async () => {
      const said = { to: 'email', said: 'yes', how: 'call', saidOn: '2026-11-01' };
      done(await sayConsent(clerk(), consentInput.parse({ ...form(), ...said })));
    },
  ],
  [
    'OwnedPiece.collectorId',
    async () => done(await keepOwned(clerk(), ownedInput.parse({ ...form(), title: 'A wren' }))),
  ],
];

/** Fields that no act asked for by somebody's id writes, and why. */
const writtenOtherwise: Record<string, string> = {
  'Collector.mergedIntoId': 'the merge itself writes it',
  'CollectorMerge.keptId': 'the merge itself writes it',
  'Commission.broughtById': 'found by letters among those that stand for themselves',
  'ReferralFee.collectorId': 'taken from whoever the sale says brought the buyer',
};

test('every field that names a collector has its act here', () => {
  const written = acts.flatMap(([of]) => of.split(' '));
  const all = [...new Set([...written, ...Object.keys(writtenOtherwise)])];
  expect(all.toSorted()).toEqual(fieldsThatName());
});

test.each(acts)('%s is the kept one’s, though asked for in the other’s name', async (of, act) => {
  await act();
  for (const field of of.split(' ')) {
    const [table, column] = field.split('.');
    const rows = await sql<{ id: string }>(
      `SELECT DISTINCT "${column}" AS id FROM "${table}" WHERE "${column}" IS NOT NULL`,
    );
    expect(rows, field).toEqual([{ id: kept }]);
  }
});
