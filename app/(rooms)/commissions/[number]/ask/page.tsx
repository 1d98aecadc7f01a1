import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { addDays } from '@/lib/dates/rules';
import { plainCents } from '@/lib/money/rules';
import { listMoneyLines, type InstalmentTold } from '@/lib/commissions/reads/payments';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { ask } from '../actions';
import { takeAskBack } from '../refund/actions';
import { OwedWords } from '../owed-words';
import { requireActor } from '@/lib/access/reads';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';

export const metadata = { title: 'Ask for money' };

/** Two weeks to pay are common practice. */
const daysToPay = 14;

type AskPageProps = Readonly<{
  params: SheetParams;
  searchParams: Promise<{ step?: string | string[] }>;
}>;

/** Money that the collector is asked for: a step of the plan, or anything else. */
export default async function AskPage({ params, searchParams }: AskPageProps) {
  const actor = await requireActor('commissions.take_money');
  const sheet = await readSheetFor(actor, params, 'ask');
  const { telling } = sheet;
  const wanted = (await searchParams).step;
  const open = sheet.plan.filter((step) => step.leftCents > 0n && !step.isAsked);
  const step = open.find(({ position }) => String(position) === wanted) ?? open[0];
  const lines = await listMoneyLines(actor, sheet.id);
  const unpaid = lines.asked.filter((each) => each.withdrawnWhy === null && each.namedCents === 0n);
  return (
    <ActPage sheet={sheet} title="Ask for money" lead={<OwedWords sheet={sheet} />}>
      <FormFrame action={ask} label="Ask for money">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <Field
          name="name"
          label="What it is for"
          width="half"
          defaultValue={step?.name ?? 'The rest'}
        />
        <Field
          name="amountCents"
          label="Amount"
          kind="money"
          width="short"
          defaultValue={plainCents(step?.leftCents ?? sheet.money?.owedCents ?? 0n)}
        />
        <Field
          name="dueOn"
          label="Due on"
          kind="day"
          width="short"
          defaultValue={addDays(telling.today, daysToPay)}
        />
        <Field
          name="stepPosition"
          label="Step of the plan"
          kind="select"
          width="half"
          options={[
            ...open.map(({ position, name }) => ({ value: String(position), label: name })),
            { value: '', label: 'none, something else' },
          ]}
          defaultValue={step ? String(step.position) : ''}
        />
        <SubmitButton>Ask for it</SubmitButton>
      </FormFrame>
      <TakeBack sheet={sheet} unpaid={unpaid} />
    </ActPage>
  );
}

type TakeBackProps = Readonly<{ sheet: Sheet; unpaid: readonly InstalmentTold[] }>;

/** What was asked for by mistake is taken back while nothing came in for it. */
function TakeBack({ sheet, unpaid }: TakeBackProps) {
  if (unpaid.length === 0) return null;
  return (
    <details>
      <summary>Something was asked for by mistake</summary>
      <FormFrame action={takeAskBack} label="Take back what was asked for">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <Field
          name="instalmentId"
          label="Which"
          kind="select"
          options={unpaid.map((each) => ({
            value: each.id,
            label: `${each.name}, number ${each.number}`,
          }))}
        />
        <Field name="why" label="Why" />
        <SubmitButton variant="quiet">Take it back</SubmitButton>
      </FormFrame>
    </details>
  );
}
