import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { listProposals, readBuildUp } from '@/lib/commissions/reads/proposal/proposals';
import { ActPage } from '../act-page';
import { readSheet, type SheetParams } from '../read-sheet';
import { BuildUpTold } from './build-up-told';
import { ProposalTold } from './proposal-told';

export const metadata = { title: 'Proposals' };

/** The proposals of a commission, the newest first: what went out, what was said to it. */
export default async function Proposals({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.see_money');
  const sheet = await readSheet(actor, params);
  const proposals = await listProposals(actor, sheet.id);
  const seesBuildUp = isAllowed(actor.roles, 'commissions.propose');
  const newest = proposals[0];
  const kept = seesBuildUp && newest ? await readBuildUp(actor, newest.id) : null;
  return (
    <ActPage sheet={sheet} title="Proposals" lead="Every version stays as it was written.">
      {sheet.acts.has('proposal') ? (
        <p>
          <ButtonLink href={`/commissions/${sheet.number}/proposal/new`}>
            {newest ? 'Write the next version' : 'Write a proposal'}
          </ButtonLink>
        </p>
      ) : null}
      {proposals.length === 0 ? (
        <Empty title="Nothing is proposed yet">
          A proposal is built up from the piece itself, and sent when you are ready.
        </Empty>
      ) : null}
      {proposals.map((proposal, at) => (
        <Section key={proposal.id} title={`Proposal ${proposal.version}`}>
          <ProposalTold
            sheet={sheet}
            proposal={proposal}
            before={proposals[at + 1] ?? null}
            isNewest={at === 0}
            mayAct={seesBuildUp}
          />
          {at === 0 && kept ? <BuildUpTold kept={kept} currency={sheet.telling.currency} /> : null}
        </Section>
      ))}
    </ActPage>
  );
}
