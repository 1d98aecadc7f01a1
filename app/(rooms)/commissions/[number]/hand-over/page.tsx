import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { owedBeforeHandOverCents } from '@/lib/commissions/rules/money/plan';
import { formatCents } from '@/lib/money/rules';
import { giveItOver } from '../actions';
import { OwedWords } from '../owed-words';
import { requireActor } from '@/lib/access/reads';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';

export const metadata = { title: 'Hand it over' };

/** The hand-over, signed by whoever takes the piece. */
export default async function HandOverPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.hand_over');
  const sheet = await readSheetFor(actor, params, 'hand-over');
  const { money, telling } = sheet;
  const before = owedBeforeHandOverCents(sheet.plan);
  return (
    <ActPage sheet={sheet} title="Hand it over" lead={<OwedWords sheet={sheet} />}>
      <FormFrame action={giveItOver} label="Hand it over">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <Field name="signedBy" label="Signed by" width="half" defaultValue={sheet.collector.name} />
        <Field
          name="handedOn"
          label="Handed over on"
          kind="day"
          width="short"
          defaultValue={telling.today}
        />
        <Field name="remarks" label="What they had to remark" kind="textarea" rows={2} optional />
        {before > 0n ? (
          <Field
            name="evenIfOwed"
            label={`${formatCents(before, telling)} is to be paid before it goes. Why does it go anyway?`}
            hint="Leave it empty to take the money first."
          />
        ) : null}
        <p>
          From this day the piece is theirs, and only now it counts as earned. The tax is charged at
          the rate of that day.
          {money && money.owedCents > 0n
            ? ` ${formatCents(money.owedCents, telling)} stays owed until it is paid.`
            : ''}
        </p>
        <SubmitButton>Hand it over</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}
