import { ButtonLink } from '@/app/ui/button/button';
import { Money } from '@/app/ui/figures/money';
import { Slab } from '@/app/ui/page/section';
import type { Receipt } from '@/lib/sales/reads/receipts';
import css from './counter.module.css';

const byWords = {
  cash: 'in cash',
  card: 'by card',
  cheque: 'by cheque',
  bank_transfer: 'by bank transfer',
  voucher: 'by voucher',
  store_credit: 'by store credit',
  deposit: 'by deposit',
  layaway: 'from the layaway',
  on_account: 'on account',
} as const;

/** After the sale: what goes back, large, and the receipt. */
export function Sold({ receipt }: Readonly<{ receipt: Receipt }>) {
  const { number, totalCents, changeCents, tenders } = receipt;
  const byCash = tenders.some((tender) => tender.kind === 'cash');
  const titles = receipt.lines.map((line) => line.title).join(', ');
  const how = [...new Set(tenders.map((tender) => byWords[tender.kind]))].join(' and ');
  return (
    <Slab>
      <div role="status" className={css['sold']}>
        <h2>Sold</h2>
        <p className={css['quiet']}>
          {titles}: <Money cents={totalCents} /> {how}
        </p>
        {byCash ? (
          <p className={css['back']}>
            <span>Goes back</span>
            <Money cents={changeCents} size="total" />
          </p>
        ) : null}
      </div>
      <div className={css['papers']}>
        <ButtonLink href={`/receipts/${number}`} variant="quiet" size="counter" wide>
          Receipt {number}
        </ButtonLink>
        <ButtonLink href={`/receipts/${number}?gift=1`} variant="quiet" size="counter" wide>
          Gift receipt, without prices
        </ButtonLink>
      </div>
      <p className={css['quiet']}>The next piece begins a new slip.</p>
    </Slab>
  );
}
