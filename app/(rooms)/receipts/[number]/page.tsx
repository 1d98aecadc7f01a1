import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { InstantText } from '@/app/ui/figures/day-text';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { addressLines } from '@/lib/documents/rules';
import { getGallery } from '@/lib/platform/settings';
import { findReceipt } from '@/lib/sales/reads/receipts';
import { readNumber } from '../receipt-address';
import css from '../receipts.module.css';
import { ReceiptLines, ReceiptSums } from './receipt-body';

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
  const gift = isGift ? '?gift=1' : '';
  return (
    <>
      <div className="not-on-paper">
        <PageHead
          title={name}
          back={{ href: `/receipts?day=${receipt.soldOn}`, name: 'The day’s receipts' }}
        >
          <ButtonLink href={`/receipts/${receipt.number}/pdf${gift}`} download>
            Print or keep as PDF
          </ButtonLink>
          <ButtonLink
            href={`/receipts/${receipt.number}${isGift ? '' : '?gift=1'}`}
            variant="quiet"
          >
            {isGift ? 'With prices' : 'As a gift, without prices'}
          </ButtonLink>
          {isAllowed(actor.roles, 'counter.sell') ? (
            <ButtonLink href="/counter" variant="quiet">
              To the counter
            </ButtonLink>
          ) : null}
        </PageHead>
      </div>
      <article className={css['paper']} aria-label={name}>
        <header className={css['paper-head']}>
          <p className={css['gallery']}>{gallery.name}</p>
          {gallery.tagline ? <p className={css['tagline']}>{gallery.tagline}</p> : null}
          {addressLines(gallery).map((line) => (
            <p key={line} className={css['small']}>
              {line}
            </p>
          ))}
        </header>
        <div>
          <h2>{name}</h2>
          <p className={css['small']}>
            <InstantText at={receipt.soldAt} zone={gallery.timeZone} /> · {receipt.soldBy}
          </p>
          {receipt.collector ? (
            <p className={css['small']}>
              For <Link href={`/collectors/${receipt.collector.id}`}>{receipt.collector.name}</Link>
            </p>
          ) : null}
        </div>
        <ReceiptLines receipt={receipt} isGift={isGift} />
        {isGift ? (
          <p className={css['small']}>
            A gift. Bring this paper to exchange it; the number finds the sale.
          </p>
        ) : (
          <ReceiptSums receipt={receipt} />
        )}
        {gallery.returnTerms ? <p className={css['small']}>{gallery.returnTerms}</p> : null}
      </article>
    </>
  );
}
