import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { holdsListed, listHolds } from '@/lib/holds/reads/hold-list';
import { listStillHere } from '@/lib/holds/reads/still-here';
import { listWaiting } from '@/lib/holds/reads/waiting-list';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { HoldRow } from './hold-row';
import css from './holds.module.css';
import { StillHereRow } from './still-here';
import { WaitingRow } from './waiting-row';

export const metadata: Metadata = { title: 'Holds' };

/** What is kept back for whom: the calls to make first. */
export default async function HoldsPage() {
  const actor = await requireActor('stock.hold');
  const at = now();
  const [{ timeZone: zone, holdHours }, holds, waiting, stillHere] = await Promise.all([
    getGallery(),
    listHolds(actor, at),
    listWaiting(actor),
    listStillHere(actor),
  ]);
  const { toCall, others } = holds;
  const shared = { zone, at, holdHours };
  const inAll = toCall.length + others.length;
  return (
    <>
      <PageHead
        title="Holds"
        lead="What is kept back for somebody, who waits for what, and what is sold and still here."
      >
        <ButtonLink href="/holds/new" size="counter">
          Hold a piece
        </ButtonLink>
      </PageHead>
      <InThisRoom room="counter" here="holds" roles={actor.roles} />
      {inAll + waiting.length + stillHere.length === 0 ? <NothingYet /> : null}
      {toCall.length > 0 ? (
        <Rows
          title="To call"
          lead="These lapse within a day, or have lapsed. Nothing is let go unasked."
        >
          {toCall.map((hold) => (
            <HoldRow key={hold.id} hold={hold} {...shared} toCall />
          ))}
        </Rows>
      ) : null}
      {waiting.length > 0 ? (
        <Rows title="Who waits" id="waiting">
          {waiting.map((each) => (
            <WaitingRow key={each.id} waiting={each} zone={zone} />
          ))}
        </Rows>
      ) : null}
      {stillHere.length > 0 ? (
        <Rows title="Sold, still here" id="still-here">
          {stillHere.map((piece) => (
            <StillHereRow key={piece.saleLineId} piece={piece} todayOn={dayOf(at, zone)} />
          ))}
        </Rows>
      ) : null}
      {others.length > 0 ? (
        <Rows title={toCall.length > 0 ? 'All other holds' : 'All holds'}>
          {others.map((hold) => (
            <HoldRow key={hold.id} hold={hold} {...shared} />
          ))}
        </Rows>
      ) : null}
      {inAll >= holdsListed ? (
        <p className={css['quiet']}>The first {holdsListed}; the others stand at their pieces.</p>
      ) : null}
    </>
  );
}

type RowsProps = Readonly<{ title: string; id?: string; lead?: string; children: ReactNode }>;

function Rows({ title, id, lead, children }: RowsProps) {
  return (
    <Section title={title} id={id} lead={lead}>
      <ul className={css['rows']}>{children}</ul>
    </Section>
  );
}

function NothingYet() {
  return (
    <Empty
      title="Nothing is held"
      act={
        <ButtonLink href="/holds/new" size="counter">
          Hold the first piece
        </ButtonLink>
      }
    >
      When somebody asks to have a piece kept back, it is held here by their name until a day and an
      hour. Nobody else can buy it meanwhile.
    </Empty>
  );
}
