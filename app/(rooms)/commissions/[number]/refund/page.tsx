import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { requireActor } from '@/lib/access/reads';
import { listMoneyLines } from '@/lib/commissions/reads/payments';
import { paymentKinds, paymentWords } from '@/lib/commissions/rules/words';
import { formatCents, plainCents } from '@/lib/money/rules';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';
import { giveMoneyBack } from './actions';

export const metadata = { title: 'Give money back' };

/** Money that goes back of a payment, the way it came unless there is a reason. */
export default async function RefundPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.give_back');
  const sheet = await readSheetFor(actor, params, 'refund');
  const { payments } = await listMoneyLines(actor, sheet.id);
  const open = payments.filter((each) => each.amountCents > each.backCents);
  const last = open.at(-1);
  const over = sheet.money?.overpaidCents ?? 0n;
  return (
    <ActPage
      sheet={sheet}
      title="Give money back"
      lead="At most what is left of the payment, and only what is still held for them."
    >
      <FormFrame action={giveMoneyBack} label="Give money back">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <Field
          name="paymentId"
          label="Of which payment"
          kind="select"
          options={open.map((each) => ({
            value: each.id,
            label: `${each.number}: ${each.paidBy}, ${paymentWords[each.kind]}, ${formatCents(each.amountCents - each.backCents, sheet.telling)} left`,
          }))}
          defaultValue={last?.id ?? ''}
        />
        <Field
          name="amountCents"
          label="How much"
          kind="money"
          width="short"
          defaultValue={over > 0n ? plainCents(over) : ''}
        />
        <Choice
          name="kind"
          legend="How it goes back"
          options={paymentKinds.map((value) => ({ value, label: paymentWords[value] }))}
          defaultValue={last?.kind}
        />
        <Field
          name="reference"
          label="Slip or cheque number"
          hint="Never the number of a card."
          width="half"
          optional
        />
        <Field name="why" label="Why" />
        <SubmitButton>Give it back</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}
