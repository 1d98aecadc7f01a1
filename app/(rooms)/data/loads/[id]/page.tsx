import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { InstantText } from '@/app/ui/figures/day-text';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { findLoad, type Load } from '@/lib/data/reads';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { stopLoad } from '../../actions';
import css from '../../data.module.css';
import { standingWords } from '../../standing-words';
import { LookAgain } from './look-again';

export const metadata: Metadata = { title: 'Bringing in a file' };

type LoadPageProps = Readonly<{ params: Promise<{ id: string }> }>;

/** How far a file is that is brought in, or how it ended. */
export default async function LoadPage({ params }: LoadPageProps) {
  const actor = await requireActor('stock.load');
  const load = await findLoad(actor, (await params).id, now());
  if (!load) notFound();
  const { timeZone } = await getGallery();
  const isUnderWay = load.standing === 'going' || load.standing === 'stopping';
  return (
    <>
      <PageHead
        title={load.fileName}
        back={{ href: '/data', name: 'Files in and out' }}
        lead={
          <>
            Begun by {load.by}, <InstantText at={load.startedAt} zone={timeZone} />.
          </>
        }
      />
      {isUnderWay ? <UnderWay load={load} /> : <Ended load={load} />}
    </>
  );
}

function UnderWay({ load }: Readonly<{ load: Load }>) {
  const { id, rowsDone, rowsTotal, standing } = load;
  const figures = [rowsDone, rowsTotal].map((rows) => rows.toLocaleString('en-US'));
  return (
    <div className={css['under-way']}>
      <p role="status">
        {standingWords(load)} {figures.join(' of ')} lines are read; none is kept before all are.
      </p>
      <progress max={Math.max(1, rowsTotal)} value={rowsDone} aria-label="How far it is" />
      <LookAgain />
      <p>
        <Link href={`/data/loads/${id}`}>Look again</Link>
      </p>
      {standing === 'going' ? (
        <FormFrame action={stopLoad} label="Stop it">
          <RequestKey />
          <input type="hidden" name="loadId" value={id} />
          <div>
            <SubmitButton variant="danger" size="counter" pendingText="Stopping it…">
              Stop, and keep nothing
            </SubmitButton>
          </div>
        </FormFrame>
      ) : null}
    </div>
  );
}

const nextPage = {
  people: { href: '/collectors', name: 'See the collectors' },
  sales: { href: '/receipts', name: 'See the receipts' },
  stock: { href: '/stock', name: 'See the stock' },
} as const;

const noticeKinds = { kept: 'done', not_kept: 'refused', half_way: 'caution' } as const;

function Ended({ load }: Readonly<{ load: Load }>) {
  const { standing, kind } = load;
  if (standing === 'going' || standing === 'stopping') return null;
  const next = standing === 'kept' ? nextPage[kind] : { href: '/data', name: 'Bring a file in' };
  return (
    <div className={css['under-way']}>
      <Notice kind={noticeKinds[standing]}>{standingWords(load)}</Notice>
      <p>
        <ButtonLink href={next.href} size="counter">
          {next.name}
        </ButtonLink>
      </p>
    </div>
  );
}
