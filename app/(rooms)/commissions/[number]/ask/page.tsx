import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { addDays } from '@/lib/dates/rules';
import { plainCents } from '@/lib/money/rules';
import { ask } from '../actions';
import { OwedWords } from '../owed-words';
import { requireActor } from '@/lib/access/reads';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';

export const metadata = { title: 'Ask for money' };

/** Two weeks to pay are common practice. */
const daysToPay = 14;

/** Money that the collector is asked for. */
export default async function AskPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.take_money');
  const sheet = await readSheetFor(actor, params, 'ask');
  const { telling, money } = sheet;
  const left = money?.depositLeftCents ?? 0n;
  return (
    <ActPage sheet={sheet} title="Ask for money" lead={<OwedWords sheet={sheet} />}>
      <FormFrame action={ask} label="Ask for money">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <Field
          name="name"
          label="What it is for"
          width="half"
          defaultValue={left > 0n ? 'Deposit' : 'The rest'}
        />
        <Field
          name="amountCents"
          label="Amount"
          kind="money"
          width="short"
          defaultValue={plainCents(left > 0n ? left : (money?.owedCents ?? 0n))}
        />
        <Field
          name="dueOn"
          label="Due on"
          kind="day"
          width="short"
          defaultValue={addDays(telling.today, daysToPay)}
        />
        <SubmitButton>Ask for it</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}
