import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { change } from '../../actions';
import { readAsking } from '../../asking/read-asking';
import { RequestQuestions } from '../../request-questions';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';

export const metadata = { title: 'What is known now' };

/** What is known of the request by now. */
export default async function ChangeRequestPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.write');
  const sheet = await readSheetFor(actor, params, 'request');
  const known = { ...sheet.request, title: sheet.title };
  const { lengthUnit } = sheet.gallery;
  const asked = await readAsking(actor, known, lengthUnit);
  const maySettleReferral = sheet.agreement === null || isAllowed(actor.roles, 'trade.keep');
  return (
    <ActPage
      sheet={sheet}
      title="What is known now"
      lead="Whatever is still not known stays open and shows as that."
    >
      <FormFrame action={change} label="What is known now">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <RequestQuestions {...{ ...asked, known, lengthUnit, maySettleReferral }} />
        <SubmitButton>Keep it</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}
