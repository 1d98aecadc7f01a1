import type { ProposalShown } from '@/lib/commissions/reads/proposal/facts';
import { formatDay } from '@/lib/dates/rules';

/** What became of a proposal, in full sentences. */
export function stateWords({ sent, answer, validUntilOn }: ProposalShown, today: string): string {
  if (answer) {
    const said = answer.accepted ? 'said yes' : 'said no';
    const words = answer.words === '' ? '' : `: “${answer.words}”`;
    const signed = answer.isSigned ? ', signed on their page' : '';
    return `${answer.by} ${said} on ${formatDay(answer.on, 'long')}${signed}${words}.`;
  }
  if (!sent) return 'Written, and not sent yet.';
  const until = validUntilOn < today ? 'It held' : 'It holds';
  return `Sent ${sent.how} on ${formatDay(sent.on, 'long')}. ${until} until ${formatDay(validUntilOn, 'long')}.`;
}
