import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { Section } from '@/app/ui/page/section';
import { SignatureFields } from '@/app/ui/signature/signature-fields';
import { WordForWord } from '@/app/ui/page/word-for-word';
import type { AgreementPaper } from '@/lib/commissions/reads/agreement/paper';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { signingCautions } from '@/lib/commissions/rules/agreement/cautions';
import { AboutCommission } from '../act-page';
import { sign } from './actions';
import { WhereSigned } from './where-signed';

type ToSignProps = Readonly<{ sheet: Sheet; paper: AgreementPaper }>;

/** The paper as it would be signed now, what to mind, and the place for the name. */
export function ToSign({ sheet, paper }: ToSignProps) {
  const { proposal, depositCents, taxCautions } = paper;
  const cautions = [
    ...taxCautions,
    ...signingCautions('at_their_home', {
      ...{ taxAs: proposal.taxAs, depositCents, priceCents: proposal.priceCents },
      hasHanging: proposal.lines.some((line) => line.kind === 'installation'),
    }),
  ];
  const here = `/commissions/${sheet.number}/agreement`;
  return (
    <>
      <Section title="Word for word">
        <WordForWord body={paper.body} />
        <p>
          <ButtonLink href={`${here}/pdf`} variant="quiet">
            As a paper
          </ButtonLink>{' '}
          <ButtonLink href={`${here}/cancel-notice`} variant="quiet">
            The papers of the right to cancel
          </ButtonLink>
        </p>
      </Section>
      {cautions.map((caution) => (
        <Caution key={caution}>{caution}</Caution>
      ))}
      <Section title="Sign it here">
        <FormFrame action={sign} label="Sign the agreement">
          <RequestKey />
          <AboutCommission sheet={sheet} />
          <input type="hidden" name="contentSha256" value={paper.contentSha256} />
          <WhereSigned legend="Where it is signed" />
          <SignatureFields
            name={sheet.collector.name}
            onPaper
            under="The collector, as they sign."
          />
          <SubmitButton>Sign the agreement</SubmitButton>
        </FormFrame>
      </Section>
    </>
  );
}
