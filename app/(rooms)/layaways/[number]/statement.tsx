import Link from 'next/link';
import css from '@/app/(rooms)/holds/holds.module.css';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Section } from '@/app/ui/page/section';
import type { LayawayFacts } from '@/lib/layaway/reads/facts';

type OfLayaway = Readonly<{ layaway: LayawayFacts }>;

/** What is put away, at the agreed prices. */
export function Pieces({ layaway }: OfLayaway) {
  return (
    <Section title="Put away">
      {layaway.lines.map((line) => (
        <div className={css['chosen']} key={`${line.skuId} ${line.editionNumber}`}>
          <span className={css['words']}>
            <span className={css['title']}>{line.title}</span>
            <span className={css['quiet']}>
              {line.what}
              {line.editionNumber === null ? '' : ` · number ${line.editionNumber}`}
            </span>
            {line.discountCents > 0n ? (
              <span className={css['quiet']}>
                <Money cents={line.discountCents} /> taken off: {line.discountReason}
              </span>
            ) : null}
          </span>
          <span>
            {line.quantity > 1 ? `${line.quantity} × ` : null}
            <Money cents={line.unitPriceCents} />
          </span>
        </div>
      ))}
    </Section>
  );
}

/** When how much was to be paid. */
export function Dues({ layaway }: OfLayaway) {
  return (
    <Section title="As agreed">
      <Table
        caption="When how much is to be paid"
        captionHeardOnly
        columns={[{ name: 'By' }, { name: 'Amount', figure: true }]}
        rows={layaway.dues.map(({ dueOn, amountCents }) => ({
          key: dueOn,
          cells: [<DayText key="on" day={dueOn} />, <Money key="cents" cents={amountCents} />],
        }))}
        foot={['Together', <Money key="all" cents={layaway.agreedTotalCents} />]}
      />
    </Section>
  );
}

/** What came in, by its receipts. */
export function Payments({ layaway }: OfLayaway) {
  const { payments } = layaway;
  if (payments.length === 0) return <p className={css['quiet']}>Nothing was paid yet.</p>;
  return (
    <Section title="Paid">
      <Table
        caption="What was paid"
        captionHeardOnly
        columns={[{ name: 'Receipt' }, { name: 'On' }, { name: 'Amount', figure: true }]}
        rows={payments.map(({ receipt, paidOn, cents, backCents }) => ({
          key: `${receipt}`,
          cells: [
            <Link key="receipt" href={`/receipts/${receipt}`} className={css['phone']}>
              {receipt}
            </Link>,
            <DayText key="on" day={paidOn} />,
            <span key="cents">
              <Money cents={cents} />
              {backCents > 0n ? (
                <>
                  , <Money cents={backCents} /> given back
                </>
              ) : null}
            </span>,
          ],
        }))}
      />
    </Section>
  );
}

/** Total, paid, remaining. */
export function Sums({ layaway }: OfLayaway) {
  const { money, agreedTotalCents, endedAt } = layaway;
  const changed = endedAt === null && money.totalCents !== agreedTotalCents;
  return (
    <dl className={css['sums']}>
      <Sum name={changed ? 'Together, with today’s tax' : 'Together'} cents={money.totalCents} />
      {changed ? <Sum name="As it was agreed" cents={agreedTotalCents} /> : null}
      <Sum name="Paid" cents={money.paidCents} />
      {endedAt === null ? (
        <div className={css['strong']}>
          <dt>Still to pay</dt>
          <dd>
            <Money cents={money.remainingCents} size="strong" />
          </dd>
        </div>
      ) : null}
    </dl>
  );
}

function Sum({ name, cents }: Readonly<{ name: string; cents: bigint }>) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <Money cents={cents} />
      </dd>
    </div>
  );
}
