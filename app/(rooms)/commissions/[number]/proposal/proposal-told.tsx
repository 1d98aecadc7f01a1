import { ButtonLink } from '@/app/ui/button/button';
import { Notice } from '@/app/ui/page/notice';
import { WordForWord } from '@/app/ui/page/word-for-word';
import type { ProposalShown } from '@/lib/commissions/reads/proposal/facts';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { formatCents } from '@/lib/money/rules';
import { AnswerForm, SendForm } from './proposal-forms';
import { stateWords } from './proposal-words';
import { LinesShown } from './worked-out';
import css from './proposal.module.css';

type ProposalToldProps = Readonly<{
  sheet: Sheet;
  proposal: ProposalShown;
  before: ProposalShown | null;
  isNewest: boolean;
  mayAct: boolean;
}>;

/** One proposal: what became of it, what it says, and what can be done with it. */
export function ProposalTold({ sheet, proposal, before, isNewest, mayAct }: ProposalToldProps) {
  const { currency, today } = sheet.telling;
  const isOpen = proposal.sent !== null && proposal.answer === null && sheet.agreement === null;
  const isToSend = isNewest && proposal.sent === null && sheet.agreement === null;
  return (
    <>
      <p>
        {stateWords(proposal, today)} {before ? changeWords(proposal, before, currency) : ''}
      </p>
      {isOpen && proposal.validUntilOn < today ? (
        <Notice kind="caution">It has run out: it can no longer be accepted.</Notice>
      ) : null}
      <LinesShown lines={proposal.lines} currency={currency} />
      <details>
        <summary>Word for word</summary>
        <WordForWord body={proposal.body} />
      </details>
      <p>
        <ButtonLink
          href={`/commissions/${sheet.number}/proposal/${proposal.version}/pdf`}
          variant="quiet"
        >
          As a paper
        </ButtonLink>
      </p>
      {mayAct ? (
        <div className={css['forms']}>
          {isToSend ? <SendForm sheet={sheet} proposal={proposal} /> : null}
          {isOpen ? <AnswerForm sheet={sheet} proposal={proposal} /> : null}
        </div>
      ) : null}
    </>
  );
}

function changeWords(
  proposal: ProposalShown,
  before: ProposalShown,
  currency: Sheet['telling']['currency'],
): string {
  const apart = proposal.priceCents - before.priceCents;
  if (apart === 0n) return `The price is that of proposal ${before.version}.`;
  const size = formatCents(apart < 0n ? -apart : apart, { currency });
  return `${size} ${apart < 0n ? 'less' : 'more'} than proposal ${before.version}.`;
}
