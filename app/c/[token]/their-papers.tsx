import { Section } from '@/app/ui/page/section';
import {
  agreementForCollector,
  changeOrdersForCollector,
} from '@/lib/commissions/reads/agreement/agreements';
import { proposalForCollector } from '@/lib/commissions/reads/proposal/for-collector';
import type { OpenPage } from '../open-page';
import css from '../page.module.css';

/** Their papers, each as a PDF. */
export async function TheirPapers({ page }: Readonly<{ page: OpenPage }>) {
  const papers = await listTheirPapers(page);
  if (papers.length === 0) return null;
  return (
    <Section title="Your papers">
      <ul className={css['lines']}>
        {papers.map(({ kind, name }) => (
          <li key={kind} className={css['ways']}>
            <a href={`/c/${page.token}/paper/${kind}`}>{name} (PDF)</a>
          </li>
        ))}
      </ul>
    </Section>
  );
}

async function listTheirPapers({ link }: OpenPage): Promise<{ kind: string; name: string }[]> {
  const [proposal, agreement, orders] = await Promise.all([
    proposalForCollector(link.commissionId),
    agreementForCollector(link.commissionId),
    changeOrdersForCollector(link.commissionId),
  ]);
  return [
    ...(proposal ? [{ kind: 'proposal', name: `Proposal ${proposal.version}` }] : []),
    ...(agreement?.body ? [{ kind: 'agreement', name: 'The agreement' }] : []),
    ...orders
      .filter(({ withdrawnWhy }) => withdrawnWhy === null)
      .map(({ number }) => ({ kind: `change-${number}`, name: `Change order ${number}` })),
  ];
}
