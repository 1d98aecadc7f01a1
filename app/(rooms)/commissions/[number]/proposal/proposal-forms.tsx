import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { ProposalShown } from '@/lib/commissions/reads/proposal/facts';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { approvalWays, approvalWayWords } from '@/lib/commissions/rules/words';
import { AboutCommission } from '../act-page';
import { note, send } from './actions';

type FormProps = Readonly<{ sheet: Sheet; proposal: ProposalShown }>;

/** How it went out. */
export function SendForm({ sheet, proposal }: FormProps) {
  return (
    <FormFrame action={send} label={`Proposal ${proposal.version} goes out`}>
      <RequestKey />
      <AboutCommission sheet={sheet} />
      <input type="hidden" name="proposalId" value={proposal.id} />
      <Choice
        name="how"
        legend="It goes out"
        options={['on their page', 'by mail', 'on paper'].map((value) => ({ value, label: value }))}
        defaultValue="on their page"
      />
      <SubmitButton>It goes out now</SubmitButton>
    </FormFrame>
  );
}

/** What they said to it, when they say it here. */
export function AnswerForm({ sheet, proposal }: FormProps) {
  return (
    <FormFrame action={note} label={`The answer to proposal ${proposal.version}`}>
      <RequestKey />
      <AboutCommission sheet={sheet} />
      <input type="hidden" name="proposalId" value={proposal.id} />
      <input type="hidden" name="contentSha256" value={proposal.contentSha256} />
      <Choice
        name="accepted"
        legend="They said"
        options={[
          { value: 'yes', label: 'yes' },
          { value: 'no', label: 'no' },
        ]}
      />
      <Field name="words" label="In their words" optional />
      <Field name="answeredBy" label="Who answered" defaultValue={sheet.collector.name} />
      <Choice
        name="how"
        legend="How"
        options={approvalWays.map((value) => ({ value, label: approvalWayWords[value] }))}
        defaultValue="in_person"
      />
      <Field
        name="answeredOn"
        label="On"
        kind="day"
        width="short"
        defaultValue={sheet.telling.today}
      />
      <SubmitButton variant="quiet">Write the answer down</SubmitButton>
    </FormFrame>
  );
}
