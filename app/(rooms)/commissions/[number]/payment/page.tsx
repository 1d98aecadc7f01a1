import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { listMoneyLines } from '@/lib/commissions/reads/payments';
import { paymentKinds, paymentWords } from '@/lib/commissions/rules/words';
import { plainCents } from '@/lib/money/rules';
import { pay } from '../actions';
import { OwedWords } from '../owed-words';
import { requireActor } from '@/lib/access/reads';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';

export const metadata = { title: 'Take a payment' };

/** Money that comes in for a commission. */
export default async function PaymentPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.take_money');
  const sheet = await readSheetFor(actor, params, 'payment');
  const lines = await listMoneyLines(actor, sheet.id);
  const asked = lines.asked.filter((each) => each.withdrawnWhy === null);
  const open = asked.find((each) => each.paidCents < each.amountCents);
  const dueCents = open ? open.amountCents - open.paidCents : (sheet.money?.owedCents ?? 0n);
  return (
    <ActPage sheet={sheet} title="Take a payment" lead={<OwedWords sheet={sheet} />}>
      <FormFrame action={pay} label="Take a payment">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <Field
          name="amountCents"
          label="Amount"
          kind="money"
          size="counter"
          width="short"
          defaultValue={plainCents(lesser(dueCents, sheet.money?.owedCents ?? 0n))}
        />
        <Choice
          name="kind"
          legend="How it was paid"
          size="counter"
          options={paymentKinds.map((value) => ({ value, label: capital(paymentWords[value]) }))}
        />
        {asked.length > 0 ? (
          <Field
            name="instalmentId"
            label="What it is for"
            kind="select"
            width="half"
            defaultValue={open?.id ?? ''}
            options={[
              ...asked.map((each) => ({ value: each.id, label: each.name })),
              { value: '', label: 'nothing that was asked for' },
            ]}
          />
        ) : null}
        <Field name="paidBy" label="Paid by" width="half" defaultValue={sheet.collector.name} />
        <Field
          name="reference"
          label="Slip or cheque number"
          hint="Never the number of a card."
          width="half"
          optional
        />
        <details>
          <summary>It is more than is owed, or a second one like the last</summary>
          <Choice
            name="keepsRest"
            kind="tick"
            legend="More than is owed"
            options={[{ value: 'yes', label: 'Keep what is too much for them; it can go back' }]}
          />
          <Choice
            name="isAnother"
            kind="tick"
            legend="The same amount again"
            options={[{ value: 'yes', label: 'This is another payment, not the same one twice' }]}
          />
        </details>
        <SubmitButton size="counter">Take the payment</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}

function lesser(one: bigint, other: bigint): bigint {
  return one < other ? one : other;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
