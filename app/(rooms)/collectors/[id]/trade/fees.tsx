import Link from 'next/link';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { Empty } from '@/app/ui/page/empty';
import { Facts } from '@/app/ui/page/facts';
import type { FeeShown, FeesOf } from '@/lib/collectors/reads/fees';
import type { Day } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import { payFees } from './actions';

type FeesProps = Readonly<{ fees: FeesOf; today: Day; mayPay: boolean; collectorId: string }>;

/** What was earned, paid and is owed, sale by sale. */
export function Fees({ fees, today, mayPay, collectorId }: FeesProps) {
  if (fees.fees.length === 0) {
    return (
      <Empty title="Nothing is earned yet">
        A fee comes here by itself when a sale at the counter names them as the one who brought the
        buyer.
      </Empty>
    );
  }
  const owed = fees.fees.filter((fee) => fee.paidOn === null && leftCents(fee) > 0n);
  return (
    <>
      <Facts
        facts={[
          {
            name: fees.owedCents < 0n ? 'Paid too much' : 'Owed',
            value: <Money cents={abs(fees.owedCents)} size="strong" />,
          },
          { name: 'Earned in all', value: <Money cents={fees.earnedCents} /> },
          { name: 'Paid in all', value: <Money cents={fees.paidCents} /> },
          { name: 'Paid this year', value: <Money cents={fees.paidThisYearCents} /> },
        ]}
      />
      <Table
        caption="Referral fees, the newest first"
        captionHeardOnly
        columns={[
          { name: 'Receipt' },
          { name: 'Day' },
          { name: 'In 100', figure: true, wideOnly: true },
          { name: 'Fee', figure: true },
          { name: 'Paid' },
        ]}
        rows={fees.fees.map((fee) => ({
          key: fee.id,
          cells: [
            <Link key="receipt" href={`/receipts/${fee.receipt}`}>
              {fee.receipt}
            </Link>,
            <DayText key="day" day={fee.earnedOn} style="short" />,
            fee.percent,
            <Money key="fee" cents={fee.amountCents} />,
            <Paid key="paid" fee={fee} />,
          ],
        }))}
      />
      {mayPay && owed.length > 0 ? <PayForm {...{ owed, today, collectorId }} /> : null}
    </>
  );
}

function Paid({ fee }: Readonly<{ fee: FeeShown }>) {
  const words = waitWords(fee).join('; ');
  if (fee.paidOn) {
    return (
      <>
        <DayText day={fee.paidOn} style="short" />
        {words === '' ? '' : `; ${words}`}
      </>
    );
  }
  if (leftCents(fee) <= 0n) return 'came back';
  return words === '' ? 'owed' : `owed; ${words}`;
}

/** What is left of a fee after what came back. */
function leftCents({ amountCents, takenBackCents }: FeeShown): bigint {
  return amountCents - takenBackCents;
}

function abs(cents: bigint): bigint {
  return cents < 0n ? -cents : cents;
}

/** What speaks for waiting: the buyer has not paid; and what has come back. */
function waitWords({ buyerOwesCents, takenBackCents }: FeeShown): string[] {
  return [
    ...(buyerOwesCents > 0n ? [`the buyer owes ${formatCents(buyerOwesCents)}`] : []),
    ...(takenBackCents > 0n ? [`${formatCents(takenBackCents)} of it came back`] : []),
  ];
}

const hows = [
  { value: 'bank_transfer', label: 'Bank transfer' },
  { value: 'cheque', label: 'Cheque' },
  { value: 'cash', label: 'Cash from the drawer' },
];

type PayFormProps = Readonly<{ owed: readonly FeeShown[]; today: Day; collectorId: string }>;

function PayForm({ owed, today, collectorId }: PayFormProps) {
  return (
    <FormFrame action={payFees} label="Pay fees">
      <RequestKey />
      <input type="hidden" name="collectorId" value={collectorId} />
      <Choice
        name="feeIds"
        legend="Pay these"
        kind="tick"
        options={owed.slice(0, 50).map((fee) => ({
          value: fee.id,
          label: `Receipt ${fee.receipt}: ${formatCents(leftCents(fee))}`,
          hint: waitWords(fee).join('; '),
        }))}
        defaultValue={owed
          .slice(0, 50)
          .filter((fee) => fee.buyerOwesCents <= 0n)
          .map((fee) => fee.id)
          .join(',')}
      />
      <Choice name="how" legend="How it is paid" options={hows} defaultValue="bank_transfer" />
      <Field name="paidOn" label="Paid on" kind="day" defaultValue={today} width="half" required />
      <Caution>
        ask for their tax form before the first payment: what one person is paid in a year may have
        to be reported. A fee is commonly paid once the buyer has paid in full.
      </Caution>
      <SubmitButton>Write down the payment</SubmitButton>
    </FormFrame>
  );
}
