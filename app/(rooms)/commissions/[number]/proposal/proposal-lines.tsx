import { ButtonLink } from '@/app/ui/button/button';
import { Section } from '@/app/ui/page/section';
import type { ProposalShown } from '@/lib/commissions/reads/proposal/facts';
import type { BuildUpKept } from '@/lib/commissions/reads/proposal/proposals';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { formatCents } from '@/lib/money/rules';
import { stateWords } from './proposal-words';

type ProposalLinesProps = Readonly<{
  sheet: Sheet;
  /** The newest first; none for those who see no money. */
  proposals: readonly ProposalShown[];
  /** How the newest was built up; null for everybody but the owner. */
  kept?: BuildUpKept | null;
}>;

/** The newest proposal on the sheet: what it asks for, and what became of it. */
export function ProposalLines({ sheet, proposals, kept = null }: ProposalLinesProps) {
  const newest = proposals[0];
  if (!newest) return null;
  const { currency, today } = sheet.telling;
  const money = (cents: bigint) => formatCents(cents, { currency });
  const out = proposals.find((each) => each.sent !== null);
  return (
    <Section
      title={`Proposal ${newest.version}`}
      id="proposal"
      act={
        <ButtonLink href={`/commissions/${sheet.number}/proposal`} variant="quiet">
          Look at the proposals
        </ButtonLink>
      }
    >
      <p>
        {money(newest.priceCents)} before tax, {money(newest.totalCents)} with it.{' '}
        {stateWords(newest, today)}
      </p>
      {out && out.version !== newest.version ? (
        <p>
          With them is still proposal {out.version}. {stateWords(out, today)}
        </p>
      ) : null}
      {kept ? (
        <p>
          It costs {money(kept.costCents)}; by area it would be {money(kept.areaCents)}.
        </p>
      ) : null}
    </Section>
  );
}
