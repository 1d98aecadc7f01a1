import { Section } from '@/app/ui/page/section';
import {
  agreementForCollector,
  changeOrdersForCollector,
} from '@/lib/commissions/reads/agreement/agreements';
import { settlementForCollector } from '@/lib/commissions/reads/money/settlement';
import { moneyLinesForCollector } from '@/lib/commissions/reads/payments';
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
  const [proposal, agreement, orders, lines, settlement] = await Promise.all([
    proposalForCollector(link.commissionId),
    agreementForCollector(link.commissionId),
    changeOrdersForCollector(link.commissionId),
    moneyLinesForCollector(link.commissionId),
    settlementForCollector(link.commissionId),
  ]);
  const asked = lines.asked.filter(({ withdrawnWhy }) => withdrawnWhy === null);
  return [
    ...(proposal ? [{ kind: 'proposal', name: `Proposal ${proposal.version}` }] : []),
    ...(agreement?.body ? [{ kind: 'agreement', name: 'The agreement' }] : []),
    ...orders
      .filter(({ withdrawnWhy }) => withdrawnWhy === null)
      .map(({ number }) => ({ kind: `change-${number}`, name: `Change order ${number}` })),
    ...asked.map(({ number, name }) => ({
      kind: `invoice-${number}`,
      name: `Invoice ${number}: ${name}`,
    })),
    ...(settlement ? [{ kind: 'settlement', name: 'The settlement of the early end' }] : []),
  ];
}
