import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Leaves } from '@/app/(rooms)/stock/leaves';
import { InstantText } from '@/app/ui/figures/day-text';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { linesPageInput } from '@/lib/data/input';
import { findFileShown, linesAPage } from '@/lib/data/reads';
import type { FilePlan } from '@/lib/data/reads/plan-file';
import { loadCountsWords, loadKindWords } from '@/lib/data/rules/plan';
import { fileRefusalMessage } from '@/lib/data/rules/refusals';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import css from '../../data.module.css';
import { ConfirmFile } from './confirm-file';
import { FileLines } from './file-lines';

export const metadata: Metadata = { title: 'A file' };

type LookPageProps = Readonly<{
  params: Promise<{ id: string }>;
  searchParams: Promise<Record<string, string | string[]>>;
}>;

/** What a file would do, line by line, and the yes to it. */
export default async function LookPage({ params, searchParams }: LookPageProps) {
  const actor = await requireActor('data.bring_in');
  const { page } = linesPageInput.parse(await searchParams);
  const shown = await findFileShown(actor, (await params).id, now());
  if (!shown) notFound();
  const { timeZone } = await getGallery();
  const { id, fileName, by, shownAt, planned } = shown;
  return (
    <>
      <PageHead
        title={fileName}
        back={{ href: '/data', name: 'Files in and out' }}
        lead={
          <>
            Looked at by {by}, <InstantText at={shownAt} zone={timeZone} />.
          </>
        }
      />
      {planned.ok ? (
        <Looked id={id} planned={planned.value} page={page} zone={timeZone} />
      ) : (
        <Notice kind="refused">{fileRefusalMessage(planned.refusal)}</Notice>
      )}
    </>
  );
}

type LookedProps = Readonly<{ id: string; planned: FilePlan; page: number; zone: string }>;

function Looked({ id, planned, page, zone }: LookedProps) {
  const { counts, planSha256, passedOver, plan } = planned;
  const pages = Math.max(1, Math.ceil(plan.length / linesAPage));
  const leaf = Math.min(page, pages);
  return (
    <>
      <p className={css['counts']}>
        {loadKindWords[planned.kind]}: {loadCountsWords(counts)}
      </p>
      <div className={css['waiting']}>
        {passedOver.length > 0 ? (
          <Notice kind="caution">
            {passedOver.length === 1 ? 'This column means' : 'These columns mean'} nothing here and
            {passedOver.length === 1 ? ' is' : ' are'} passed over: {passedOver.join(', ')}.
          </Notice>
        ) : null}
        <ConfirmFile loadId={id} counts={counts} planSha256={planSha256} />
      </div>
      <Section title="Line by line">
        <FileLines planned={planned} from={(leaf - 1) * linesAPage} most={linesAPage} zone={zone} />
        <Leaves page={leaf} pages={pages} hrefOf={(each) => `/data/look/${id}?page=${each}`} />
      </Section>
    </>
  );
}
