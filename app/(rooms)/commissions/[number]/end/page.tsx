import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
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
  const held = sheet.paidCents ?? 0n;
  return (
    <ActPage
      sheet={sheet}
      title="End it early"
      lead="The sheet stays with everything on it; nothing more is written to it."
    >
      {held > 0n ? (
        <Notice kind="caution">
          {formatCents(held, sheet.telling)} was paid. It stays a debt to {sheet.collector.name}{' '}
          until you decide whether it goes back or stays; what the agreement and the law say, an
          adviser knows.
        </Notice>
      ) : null}
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
        <SubmitButton variant="danger">End this commission</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}
