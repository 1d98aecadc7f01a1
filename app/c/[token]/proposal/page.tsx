import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { SignatureFields } from '@/app/ui/signature/signature-fields';
import { WordForWord } from '@/app/ui/page/word-for-word';
import type { ProposalShown } from '@/lib/commissions/reads/proposal/facts';
import { proposalForCollector } from '@/lib/commissions/reads/proposal/for-collector';
import { dayOf, formatDay } from '@/lib/dates/rules';
import { currencyNamed } from '@/lib/money/rules';
import { openPage, type OpenPage, type TokenParams } from '../../open-page';
import { Kept } from '../../parts/kept';
import { ByThisAddress, TheirAct } from '../../parts/their-act';
import { sayToProposal } from '../actions';

export const metadata: Metadata = { title: 'The proposal' };

/** The proposal word for word, and the collector's answer to it. */
export default async function ProposalPage({ params }: Readonly<{ params: TokenParams }>) {
  const page = await openPage(params);
  const proposal = await proposalForCollector(page.link.commissionId);
  if (!proposal) notFound();
  const hasRunOut = proposal.validUntilOn < dayOf(page.at, page.gallery.timeZone);
  return (
    <TheirAct
      page={page}
      title={`Proposal ${proposal.version}`}
      lead={`It holds until ${formatDay(proposal.validUntilOn, 'long')}.`}
    >
      <Prices proposal={proposal} page={page} />
      <h2>Word for word</h2>
      <WordForWord body={proposal.body} />
      <p>
        <a href={`/c/${page.token}/paper/proposal`}>The same as a paper (PDF)</a>
      </p>
      {proposal.answer ? (
        <Kept
          said={`${proposal.answer.accepted ? 'Yes' : 'No'} to proposal ${proposal.version}`}
          by={proposal.answer.by}
          on={proposal.answer.on}
          sha256={proposal.contentSha256}
          next={
            proposal.answer.accepted
              ? 'The gallery writes the agreement next. You will find it on your page.'
              : 'The gallery reads what you wrote, and gets in touch.'
          }
        />
      ) : hasRunOut ? (
        <Notice kind="caution">It has run out. Ask the gallery whether it still holds.</Notice>
      ) : (
        <AnswerForm proposal={proposal} page={page} />
      )}
    </TheirAct>
  );
}

type Shown = Readonly<{ proposal: ProposalShown; page: OpenPage }>;

function Prices({ proposal, page }: Shown) {
  const currency = currencyNamed(page.gallery.currency);
  return (
    <Table
      caption="What it costs, before tax"
      columns={[{ name: 'For' }, { name: 'Price', figure: true }]}
      rows={proposal.lines.map(({ words, amountCents }, at) => ({
        key: String(at),
        cells: [words, <Money key="price" cents={amountCents} currency={currency} />],
      }))}
      foot={['Together', <Money key="all" cents={proposal.priceCents} currency={currency} />]}
    />
  );
}

function AnswerForm({ proposal, page }: Shown) {
  return (
    <FormFrame action={sayToProposal} label="Your answer">
      <h2>Your answer</h2>
      <RequestKey />
      <ByThisAddress page={page} />
      <input type="hidden" name="proposalId" value={proposal.id} />
      <input type="hidden" name="contentSha256" value={proposal.contentSha256} />
      <Choice
        name="accepted"
        legend="What you say"
        layout="down"
        options={[
          { value: 'yes', label: 'Yes, I accept this proposal' },
          { value: 'no', label: 'No, not as it stands' },
        ]}
      />
      <Field name="words" label="Anything you want to say with it" optional maxLength={160} />
      <SignatureFields
        name={page.link.forName}
        under="Your name stands under exactly the words above."
      />
      <SubmitButton pendingText="Sending it…">Send my answer</SubmitButton>
    </FormFrame>
  );
}
