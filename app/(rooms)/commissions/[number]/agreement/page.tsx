import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { findAgreementPaper } from '@/lib/commissions/reads/agreement/paper-for';
import { listTaxPlaces } from '@/lib/commissions/reads/tax-places';
import { writeAgreement } from '../actions';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';
import { AgreementQuestions } from './agreement-questions';
import { ToSign } from './to-sign';

export const metadata = { title: 'The agreement' };

/** The agreement: built from the accepted proposal and signed, or written down from a paper. */
export default async function AgreementPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.agree');
  const sheet = await readSheetFor(actor, params, 'agreement');
  const [places, paper] = await Promise.all([
    listTaxPlaces(actor),
    findAgreementPaper(actor, sheet.id, sheet.telling.today),
  ]);
  const onPaper = (
    <FormFrame action={writeAgreement} label="What was agreed">
      <RequestKey />
      <AboutCommission sheet={sheet} />
      <AgreementQuestions sheet={sheet} places={places} proposedAs={paper?.proposal.taxAs} />
      <SubmitButton variant={paper ? 'quiet' : undefined}>Write the agreement down</SubmitButton>
    </FormFrame>
  );
  return (
    <ActPage
      sheet={sheet}
      title={paper ? 'The agreement' : 'What was agreed'}
      lead="There is one agreement. What changes after it is a change order of its own."
    >
      {paper ? (
        <>
          <ToSign sheet={sheet} paper={paper} />
          <details>
            <summary>It was agreed on another paper</summary>
            {onPaper}
          </details>
        </>
      ) : (
        <Section
          title="On a paper of its own"
          lead="Without a proposal: the price, the deposit and the day, as they were signed elsewhere."
        >
          {onPaper}
        </Section>
      )}
    </ActPage>
  );
}
