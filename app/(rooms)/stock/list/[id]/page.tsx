import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { z } from 'zod';
import { ButtonLink } from '@/app/ui/button/button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { getGallery } from '@/lib/platform/settings';
import { pageInput } from '@/lib/stock/input';
import { findStockList, type ListShown } from '@/lib/stock/reads/stock-lists';
import { countsWords } from '@/lib/stock/rules/list-summary';
import { Leaves } from '../../leaves';
import css from '../../stock.module.css';
import { ConfirmList, LookOnceMore } from './confirm-list';
import { ListLines } from './list-lines';

export const metadata: Metadata = { title: 'A stock list' };

type ListPageProps = Readonly<{
  params: Promise<{ id: string }>;
  searchParams: Promise<Record<string, string | string[]>>;
}>;

/** What a stock list would do, line by line, and the yes to it. */
export default async function ListPage({ params, searchParams }: ListPageProps) {
  const actor = await requireActor('stock.load');
  const id = z.uuid().safeParse((await params).id);
  if (!id.success) notFound();
  const { page } = pageInput.parse(await searchParams);
  const [list, { timeZone }] = await Promise.all([
    findStockList(actor, id.data, page),
    getGallery(),
  ]);
  if (!list) notFound();
  return (
    <>
      <PageHead
        title={list.fileName}
        back={{ href: '/stock/list', name: 'Stock lists' }}
        lead={
          <>
            Looked at by {list.shownBy}, <InstantText at={list.shownAt} zone={timeZone} />, for the
            place “{list.place}”.
          </>
        }
      />
      <p className={css['counts']}>{countsWords(list)}</p>
      {list.confirmedAt ? (
        <BroughtIn at={list.confirmedAt} timeZone={timeZone} />
      ) : (
        <Waiting list={list} />
      )}
    </>
  );
}

function BroughtIn({ at, timeZone }: Readonly<{ at: Date; timeZone: string }>) {
  return (
    <>
      <Notice kind="done">
        It was brought in <InstantText at={at} zone={timeZone} />.
      </Notice>
      <p>
        <ButtonLink href="/stock">See the stock</ButtonLink>
      </p>
    </>
  );
}

function Waiting({ list }: Readonly<{ list: ListShown }>) {
  const { passedOver, page, pages } = list;
  return (
    <>
      <div className={css['waiting']}>
        {passedOver.length > 0 ? (
          <Notice kind="caution">
            {passedOver.length === 1 ? 'This column means' : 'These columns mean'} nothing here and
            {passedOver.length === 1 ? ' is' : ' are'} passed over: {passedOver.join(', ')}.
          </Notice>
        ) : null}
        {list.isStillTrue ? <ConfirmList list={list} /> : <LookOnceMore stockListId={list.id} />}
      </div>
      <Section title="Line by line">
        <ListLines lines={list.lines} system={list.system} />
        <Leaves
          page={page}
          pages={pages}
          hrefOf={(leaf) => `/stock/list/${list.id}?page=${leaf}`}
        />
      </Section>
    </>
  );
}
