import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { Doer } from '@/lib/access/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { titleWithout } from '../../rules/erase';
import { placeKey } from '../../rules/place-key';
import type { ToStrike } from './card';

const struckOut = 'struck out';

/**
 * Strikes wishes, walls, letters and days out of commissions that are over. Agreements, changes and
 * everything that was signed stay as they were signed, under their hash.
 */
export async function strikeCommissions(tx: Tx, doer: Doer, who: ToStrike): Promise<void> {
  const rows = await tx.commission.findMany({
    where: { collectorId: { in: [...who.ids] } },
    select: { id: true, number: true, title: true },
  });
  for (const { id, number, title } of rows) {
    const plain = titleWithout(title, who.names, `Commission ${number}`);
    const noOne = { decides: null, pays: null, wallOwner: null, access: null, foundUs: null };
    await tx.commission.update({
      where: { id },
      data: {
        ...{ title: plain, wish: '', avoid: '', room: null, siteAddress: null, ...noOne },
        wishedWhy: null,
      },
      select: { id: true },
    });
    if (plain !== title) {
      await tx.job.updateMany({ where: { commissionId: id }, data: { title: plain } });
    }
  }
  const where = { commissionId: { in: rows.map(({ id }) => id) } };
  await strikeLetters(tx, where);
  for (const email of who.emails) {
    const toAddress = { equals: email, mode: 'insensitive' } as const;
    await strikeLetters(tx, { toAddress });
  }
  await strikeDays(tx, where);
  await shutPages(tx, doer, where);
}

type OfThese = { commissionId: { in: string[] } };

async function strikeLetters(tx: Tx, where: Prisma.MailSentWhereInput): Promise<void> {
  await tx.mailSent.updateMany({
    where: { ...where, failure: { not: null } },
    data: { failure: struckOut },
  });
  const data = { toAddress: struckOut, subject: struckOut, words: '' };
  await tx.mailSent.updateMany({ where, data });
}

async function strikeDays(tx: Tx, where: OfThese): Promise<void> {
  await forgetWays(tx, where);
  const words = { note: '', meets: '', prepares: '', fallBack: '', codes: '' };
  await tx.appointment.updateMany({ where, data: { address: struckOut, ...words } });
  await tx.appointment.updateMany({
    where: { ...where, calledOffWhy: { not: null } },
    data: { calledOffWhy: struckOut },
  });
  await tx.dayOffer.updateMany({ where, data: { address: struckOut, note: '' } });
}

/** The ways that are kept to where they live are forgotten. */
async function forgetWays(tx: Tx, where: OfThese): Promise<void> {
  const rows = await tx.appointment.findMany({ where, select: { address: true } });
  const places = [...new Set(rows.map(({ address }) => placeKey(address)))];
  await tx.travelTime.deleteMany({
    where: { OR: [{ fromPlace: { in: places } }, { toPlace: { in: places } }] },
  });
}

/** Their pages open no more; addresses under which nothing was signed or chosen are thrown away. */
async function shutPages(tx: Tx, doer: Doer, where: OfThese): Promise<void> {
  await tx.collectorLink.updateMany({
    where: { ...where, withdrawnAt: null },
    data: { withdrawnAt: doer.at },
  });
  const none = { none: {} };
  await tx.collectorLink.deleteMany({
    where: { ...where, signatures: none, changesAsked: none, chosenDays: none },
  });
}
