import { randomUUID } from 'node:crypto';
import { agree } from '@/lib/commissions/writes/agreement';
import { dateFromDay } from '@/lib/dates/rules';
import { accounts } from '@/lib/ledger/rules';
import { postEntry } from '@/lib/ledger/writes';
import { inOrder } from '@/lib/installation/rules/crew/ways';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { recordSales, type RecordedSale } from '@/lib/sales/writes/record-sales';
import { moveCredits } from '@/lib/vouchers/writes';
import { done, on } from '@/tests/database/commissions/a-commission';
import { doing, noon, type OpenGallery } from '@/tests/database/sales/open-gallery';
import type { WholeLife } from './a-whole-life';

/** Everything that names somebody besides the tables that point at them: letters, names signed. */
export async function leaveTraces(gallery: OpenGallery, { id: collectorId, mark }: WholeLife) {
  const { id: commissionId } = await db().commission.findFirstOrThrow({ where: { collectorId } });
  await db().commission.update({
    where: { id: commissionId },
    data: {
      ...{ wish: `For ${mark}`, avoid: `not ${mark}`, room: `${mark} room`, wishedWhy: mark },
      ...{ siteAddress: `3 ${mark} Way`, decides: mark, pays: mark, wallOwner: mark },
      ...{ access: `ask ${mark}`, foundUs: `through ${mark}` },
    },
  });
  await signThings(gallery, { commissionId, mark });
  await writeLetters(gallery, { commissionId, mark });
  await sendThem(gallery, { id: collectorId, mark });
}

type Of = { commissionId: string; mark: string };

async function signThings(gallery: OpenGallery, { commissionId, mark }: Of) {
  done(
    await agree(on(gallery.owner, '2026-11-04'), {
      ...{ requestKey: randomUUID(), commissionId, priceCents: 100_000n, promisedOn: null },
      ...{ taxPlaceId: gallery.taxPlaceId, agreedOn: '2026-11-04', agreedBy: `Name ${mark}` },
      deposit: { as: 'amount', amountCents: 10_000n },
    }),
  );
  const link = (forName: string) => ({
    ...{ commissionId, forName, madeById: gallery.owner.id, madeAt: noon },
    tokenSha256: randomUUID().replaceAll('-', '').repeat(2),
    runsOutAt: new Date('2027-01-01'),
  });
  await db().collectorLink.create({ data: link(`Unused ${mark}`) });
  const { id: linkId } = await db().collectorLink.create({ data: link(`Signer ${mark}`) });
  await db().signature.create({
    data: {
      ...{ commissionId, kind: 'typed', name: `Name ${mark}`, linkId, at: noon },
      contentSha256: 'a'.repeat(64),
    },
  });
}

async function writeLetters(gallery: OpenGallery, { commissionId, mark }: Of) {
  const by = { staffId: gallery.owner.id, at: noon };
  const letter = { subject: `Dear ${mark}`, words: `Words to ${mark}`, ...by };
  const toAddress = `${mark}@life.example`;
  await db().mailSent.create({ data: { commissionId, toAddress, ...letter, sentAt: noon } });
  await db().mailSent.create({
    data: { toAddress: toAddress.toUpperCase(), ...letter, sentAt: noon },
  });
  const failure = `550 no mailbox ${mark}`;
  await db().mailSent.create({ data: { commissionId, toAddress, ...letter, failure } });
  const day = { commissionId, leadId: gallery.owner.id, address: `3 ${mark} Way`, note: mark };
  const booked = { kind: 'site_visit' as const, bookedById: gallery.owner.id, bookedAt: noon };
  const hours = [new Date('2026-11-10T18:00:00Z'), new Date('2026-11-10T19:00:00Z')] as const;
  await db().appointment.create({
    data: {
      ...{ ...day, ...booked, startsAt: hours[0], endsAt: hours[1] },
      ...{ meets: `${mark}, by the gate`, prepares: mark, fallBack: mark, codes: mark },
    },
  });
  const [fromPlace, toPlace] = inOrder(`3 ${mark} Way`, 'zz the gallery');
  const way = { fromPlace, toPlace, minutes: 20, staffId: gallery.owner.id, at: noon };
  await db().travelTime.create({ data: way });
  await db().dayOffer.create({
    data: { ...day, kind: 'site_visit', offeredById: gallery.owner.id, at: noon },
  });
}

/** A sale that was sent, as a gift with words. */
async function sendThem(gallery: OpenGallery, { id: collectorId, mark }: Omit<WholeLife, 'piece'>) {
  const sums = { netCents: 10_000n, taxCents: 0n, totalCents: 10_000n, taxes: [] };
  const line = {
    ...{ kind: 'typed' as const, skuId: null, designId: null, title: 'A tile', what: '' },
    ...{ quantity: 1, unitPriceCents: 10_000n, discountCents: 0n, netCents: 10_000n },
    ...{ taxable: false, taxKind: 'none' as const, taxableCents: 0n, taxCents: 0n },
    unitCostCents: null,
  };
  const sold = await inTransaction<RecordedSale[], never>(async (tx) =>
    ok(
      await recordSales(tx, doing(gallery.clerk), [
        {
          ...{ ...sums, lines: [line], channel: 'shipped', soldOn: '2026-11-20', collectorId },
          ...{ placeId: gallery.counterId, taxPlaceId: gallery.taxPlaceId, delivery: 'sent' },
          tenders: [{ kind: 'cash', amountCents: 10_000n, givenCents: null, reference: '' }],
          ...{ deliverTo: `Name ${mark}, 1 ${mark} Lane`, giftTo: `Aunt ${mark}` },
          giftWords: `With love, ${mark}`,
        },
      ]),
    ),
  );
  done(sold);
}

/** Ends everything that is open in somebody's name, past the commands: by the rows that they write. */
export async function closeEverything(gallery: OpenGallery, { id, mark }: WholeLife) {
  const where = { collectorId: id };
  const endedAt = noon;
  await db().hold.updateMany({ where, data: { endedAt, endedHow: 'released' } });
  await db().layaway.updateMany({ where, data: { endedAt, endedWhy: `${mark} moved` } });
  await db().onApproval.updateMany({ where, data: { endedAt } });
  await db().specialOrder.updateMany({ where, data: { endedAt, endedWhy: `${mark} moved` } });
  await db().wholesaleOrder.updateMany({ where, data: { endedAt, endedWhy: `${mark} shut` } });
  await db().slip.updateMany({ where: { ...where, saleId: null }, data: { thrownAwayAt: noon } });
  await db().consignee.updateMany({ where, data: { endedOn: dateFromDay('2026-11-20') } });
  const commissions = await db().commission.findMany({ where, select: { id: true } });
  for (const { id: commissionId } of commissions) {
    const ended = { endedOn: dateFromDay('2026-11-20'), staffId: gallery.owner.id, at: noon };
    await db().commissionEnding.create({
      data: { commissionId, why: `${mark} thought better of it`, ...ended },
    });
  }
  await letArrive(gallery, id);
  await settleMoney(gallery, id);
}

async function letArrive(gallery: OpenGallery, collectorId: string) {
  for (const { id: shipmentId } of await db().shipment.findMany({ where: { collectorId } })) {
    const by = { staffId: gallery.owner.id, at: noon, on: dateFromDay('2026-11-20') };
    await db().shipmentEvent.create({ data: { shipmentId, kind: 'arrived', ...by } });
  }
}

async function settleMoney(gallery: OpenGallery, collectorId: string) {
  const credits = await db().credit.findMany({ where: { collectorId } });
  await inTransaction(async (tx) => {
    const doer = doing(gallery.owner);
    const used = credits.filter(({ balanceCents }) => balanceCents > 0n);
    await moveCredits(
      tx,
      doer,
      used.map(({ id: creditId, balanceCents }) => ({ creditId, amountCents: -balanceCents })),
    );
    await postEntry(tx, {
      ...{ on: '2026-11-20', at: noon, staffId: gallery.owner.id, memo: 'All is settled' },
      ...{ paper: 'Collector', paperId: collectorId },
      postings: [
        { account: accounts.owedByCollectors, amountCents: -700n, collectorId },
        { account: accounts.referralFeesOwed, amountCents: 1_000n, collectorId },
        { account: accounts.bank, amountCents: -300n },
      ],
    });
    return ok(null);
  });
}
