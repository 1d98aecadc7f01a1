import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { becameWords, refundWords } from '@/lib/documents/rules/return-words';
import { getGallery } from '@/lib/platform/settings';
import { findReturn, type ReturnPaper } from '@/lib/returns/reads';
import { Sum } from '../../[number]/receipt-body';
import { PaperHead } from '../../paper-head';
import { readNumber } from '../../receipt-address';
import css from '../../receipts.module.css';

type ReturnProps = Readonly<{ params: Promise<{ number: string }> }>;

export async function generateMetadata({ params }: ReturnProps): Promise<Metadata> {
  return { title: `Return ${(await params).number}` };
}

/** The paper that says what came back, and what was given back for it. */
export default async function ReturnPaperPage({ params }: ReturnProps) {
  const actor = await requireActor('receipts.see');
  const number = readNumber((await params).number);
  const paper = number === null ? null : await findReturn(actor, number);
  if (!paper) notFound();
  const gallery = await getGallery();
  const name = `Return ${paper.number}`;
  return (
    <>
      <div className="not-on-paper">
        <PageHead
          title={name}
          back={{
            href: `/receipts/${paper.receiptNumber}`,
            name: `Receipt ${paper.receiptNumber}`,
          }}
        >
          <ButtonLink href={`/receipts/returns/${paper.number}/pdf`} download size="counter">
            Print or keep as PDF
          </ButtonLink>
          <ButtonLink href="/counter" variant="quiet" size="counter">
            {paper.kind === 'exchanged' ? 'Now the other piece' : 'To the counter'}
          </ButtonLink>
        </PageHead>
        <InThisRoom room="counter" here="receipts" roles={actor.roles} />
        <div className={css['told']}>
          <CreditTold paper={paper} />
        </div>
      </div>
      <article className={css['paper']} aria-label={name}>
        <PaperHead gallery={gallery} />
        <div>
          <h2>{name}</h2>
          <p className={css['small']}>
            <InstantText at={paper.at} zone={gallery.timeZone} /> · {paper.by}
          </p>
          <p className={css['small']}>
            Of <Link href={`/receipts/${paper.receiptNumber}`}>receipt {paper.receiptNumber}</Link>
            {paper.collector ? ` · ${paper.collector.name}` : ''}
          </p>
          <p>{paper.reason}</p>
        </div>
        <ReturnLines paper={paper} />
        <ReturnSums paper={paper} />
      </article>
    </>
  );
}

/** The number of the credit, large: it is written on the wrapping, or used at once. */
function CreditTold({ paper }: Readonly<{ paper: ReturnPaper }>) {
  return paper.credits.map(({ code, amountCents }) => (
    <Notice key={code} kind="done">
      <Money cents={amountCents} size="strong" /> is on{' '}
      <Link href={`/vouchers/${code}`}>{code}</Link>. Write that number when the other piece is
      paid.
    </Notice>
  ));
}

function ReturnLines({ paper }: Readonly<{ paper: ReturnPaper }>) {
  return (
    <ul className={css['lines']} aria-label="What came back">
      {paper.lines.map((line) => (
        <li key={line.id} className={css['line']}>
          <div>
            <p className={css['title']}>{line.title}</p>
            <p className={css['small']}>{line.what}</p>
            <p className={css['small']}>{becameWords(line)}</p>
          </div>
          <Money cents={line.netCents} />
        </li>
      ))}
    </ul>
  );
}

function ReturnSums({ paper }: Readonly<{ paper: ReturnPaper }>) {
  return (
    <dl className={css['sums']}>
      <Sum name="Before tax" cents={paper.netCents} />
      {paper.taxes.map((tax) => (
        <Sum key={tax.authority} name={`Sales tax, ${tax.authority}`} cents={tax.taxCents} />
      ))}
      {paper.feeCents > 0n ? <Sum name="Kept by us" cents={-paper.feeCents} /> : null}
      <Sum name="Given back" cents={paper.totalCents} isTotal />
      {paper.refunds.map((refund) => (
        <Sum key={refund.id} name={refundWords(refund)} cents={refund.amountCents} />
      ))}
    </dl>
  );
}
