import 'server-only';
import { proposalForCollector } from '@/lib/commissions/reads/proposal/for-collector';
import { dayOf } from '@/lib/dates/rules';
import { proposalPdf } from '@/lib/documents/commissions/proposal';
import type { OpenPage } from '../../../open-page';

type TheirPaper = { name: string; bytes: Awaited<ReturnType<typeof proposalPdf>> };

const papers: Readonly<Record<string, (page: OpenPage) => Promise<TheirPaper | null>>> = {
  proposal: proposalPaper,
};

/** One of the collector's papers by its name in the address; null for anything else. */
export async function readTheirPaper(page: OpenPage, kind: string): Promise<TheirPaper | null> {
  return Object.hasOwn(papers, kind) ? ((await papers[kind]?.(page)) ?? null) : null;
}

async function proposalPaper({ link, gallery, at }: OpenPage): Promise<TheirPaper | null> {
  const proposal = await proposalForCollector(link.commissionId);
  if (!proposal) return null;
  const { title: work, commissionNumber, forName: collector } = link;
  const on = proposal.sent?.on ?? dayOf(at, gallery.timeZone);
  const paper = { proposal, work, collector, commissionNumber, on, picture: null };
  const name = `proposal-${commissionNumber}-${proposal.version}`;
  return { name, bytes: await proposalPdf(paper, gallery) };
}
