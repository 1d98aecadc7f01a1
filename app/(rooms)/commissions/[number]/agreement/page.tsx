import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { listTaxPlaces } from '@/lib/commissions/reads/tax-places';
import { writeAgreement } from '../actions';
import { AgreementQuestions } from './agreement-questions';
import { requireActor } from '@/lib/access/reads';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';

export const metadata = { title: 'What was agreed' };

/** What was agreed: price, deposit, day. */
export default async function AgreementPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.agree');
  const sheet = await readSheetFor(actor, params, 'agreement');
  const places = await listTaxPlaces(actor);
  return (
    <ActPage
      sheet={sheet}
      title={sheet.agreement ? 'Change what was agreed' : 'What was agreed'}
      lead="A change is written down as a new agreement; the one before it stays on the sheet."
    >
      <FormFrame action={writeAgreement} label="What was agreed">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <AgreementQuestions sheet={sheet} places={places} />
        <SubmitButton>Write the agreement down</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}
