import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Facts } from '@/app/ui/page/facts';
import { Notice } from '@/app/ui/page/notice';
import { endStageWords, settleEnd } from '@/lib/commissions/rules/money/ending';
import { formatCents } from '@/lib/money/rules';
import { endIt } from '../actions';
import { requireActor } from '@/lib/access/reads';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';

export const metadata = { title: 'End it early' };

/** An early end, and why. */
export default async function EndPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.end');
  const sheet = await readSheetFor(actor, params, 'end');
  const settled = settleEnd(sheet.facts, sheet.cancelTerms, sheet.paidCents ?? 0n, null);
  const money = (cents: bigint) => formatCents(cents, sheet.telling);
  return (
    <ActPage
      sheet={sheet}
      title="End it early"
      lead="The sheet stays with everything on it. What stays of the price and is not paid can still come in; the settlement is a paper of its own."
    >
      <Facts
        facts={[
          { name: 'It ends', value: endStageWords[settled.stage] },
          { name: 'Stays by the agreement', value: money(settled.feeCents) },
          { name: 'Of it paid already', value: money(settled.keptCents) },
          { name: 'Goes back', value: money(settled.backCents) },
          { name: 'Still owed of it', value: money(settled.stillOwedCents) },
        ]}
      />
      <Notice kind="caution">
        What stays is income of its own kind, no sale. What goes back stays held for{' '}
        {sheet.collector.name} until you give it back. What the law says to it, an adviser knows.
      </Notice>
      <FormFrame action={endIt} label="End it early">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <Field name="why" label="Why it ends" kind="textarea" rows={3} />
        <Field
          name="endedOn"
          label="Ended on"
          kind="day"
          width="short"
          defaultValue={sheet.telling.today}
        />
        <Field
          name="ownFeeCents"
          label="Keep another amount"
          hint="Leave it empty for what the agreement says."
          kind="money"
          width="short"
          optional
        />
        <Field
          name="fate"
          label="What becomes of the pieces already made"
          hint="Kept for stock, given to them, or not worth keeping."
          optional={settled.stage === 'before_making'}
        />
        <SubmitButton variant="danger">End this commission</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}
