import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { InstantText } from '@/app/ui/figures/day-text';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { deliveryWords } from '@/lib/documents/receipt-words';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import { findReceipt, type Receipt } from '@/lib/sales/reads/receipts';
import { PaperHead } from '../paper-head';
import { readNumber } from '../receipt-address';
import css from '../receipts.module.css';
import { CarrierSlip } from './carrier-slip';
import { ReceiptLines, ReceiptReturns, ReceiptSums } from './receipt-body';
import { SendingLines } from './sending-lines';

type ReceiptProps = Readonly<{
  params: Promise<{ number: string }>;
  searchParams: Promise<{ gift?: string | string[] }>;
}>;

export async function generateMetadata({ params }: ReceiptProps): Promise<Metadata> {
  return { title: `Receipt ${(await params).number}` };
}

/** One receipt, on the wall and on paper; as a gift it names no price. */
export default async function ReceiptPage({ params, searchParams }: ReceiptProps) {
  const actor = await requireActor('receipts.see');
  const number = readNumber((await params).number);
  const receipt = number === null ? null : await findReceipt(actor, number);
  if (!receipt) notFound();
  const isGift = (await searchParams).gift === '1';
  const gallery = await getGallery();
  const name = `${isGift ? 'Gift receipt' : 'Receipt'} ${receipt.number}`;
  const mayGiveBack = isAllowed(actor.roles, 'counter.give_back');
  return (
    <>
      <div className="not-on-paper">
        <PageHead
          title={name}
          back={{ href: `/receipts?day=${receipt.soldOn}`, name: 'The day’s receipts' }}
        >
          <Acts receipt={receipt} isGift={isGift} mayGiveBack={mayGiveBack} />
        </PageHead>
        <InThisRoom room="counter" here="receipts" roles={actor.roles} />
      </div>
      <ReceiptPaper receipt={receipt} gallery={gallery} isGift={isGift} name={name} />
      <SendingLines receipt={receipt} actor={actor} zone={gallery.timeZone} />
      <CarrierSlip receipt={receipt} mayKeep={isAllowed(actor.roles, 'counter.sell')} />
    </>
  );
}

type ActsProps = Readonly<{ receipt: Receipt; isGift: boolean; mayGiveBack: boolean }>;

function Acts({ receipt, isGift, mayGiveBack }: ActsProps) {
  const { number, lines } = receipt;
  const isOut = lines.some((line) => line.backCount < line.quantity);
  return (
    <>
      <ButtonLink
        href={`/receipts/${number}/pdf${isGift ? '?gift=1' : ''}`}
        download
        size="counter"
      >
        Print or keep as PDF
      </ButtonLink>
      <ButtonLink
        href={`/receipts/${number}${isGift ? '' : '?gift=1'}`}
        variant="quiet"
        size="counter"
      >
        {isGift ? 'With prices' : 'As a gift, without prices'}
      </ButtonLink>
      {mayGiveBack && isOut ? (
        <ButtonLink href={`/receipts/${number}/return`} variant="quiet" size="counter">
          Take something back
        </ButtonLink>
      ) : null}
    </>
  );
}

type PaperProps = Readonly<{ receipt: Receipt; gallery: Gallery; isGift: boolean; name: string }>;

function ReceiptPaper({ receipt, gallery, isGift, name }: PaperProps) {
  const delivery = deliveryWords(receipt);
  const { giftTo, giftWords } = receipt;
  return (
    <article className={css['paper']} aria-label={name}>
      <PaperHead gallery={gallery} />
      <div>
        <h2>{name}</h2>
        <p className={css['small']}>
          <InstantText at={receipt.soldAt} zone={gallery.timeZone} /> · {receipt.soldBy}
        </p>
        {receipt.collector && !isGift ? (
          <p className={css['small']}>
            For <Link href={`/collectors/${receipt.collector.id}`}>{receipt.collector.name}</Link>
          </p>
        ) : null}
        {receipt.fair ? <p className={css['small']}>At the fair: {receipt.fair}</p> : null}
        {delivery === '' ? null : <p className={css['small']}>{delivery}</p>}
      </div>
      {giftTo === '' && giftWords === '' ? null : (
        <div>
          {giftTo === '' ? null : <p className={css['title']}>For {giftTo}</p>}
          {giftWords === '' ? null : <p>{giftWords}</p>}
        </div>
      )}
      <ReceiptLines receipt={receipt} isGift={isGift} />
      {isGift ? (
        <p className={css['small']}>
          A gift. Bring this paper to exchange it; the number finds the sale.
        </p>
      ) : (
        <>
          <ReceiptSums receipt={receipt} />
          <ReceiptReturns receipt={receipt} />
        </>
      )}
      {gallery.returnTerms ? <p className={css['small']}>{gallery.returnTerms}</p> : null}
    </article>
  );
}
