import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import css from '@/app/(rooms)/holds/holds.module.css';
import { dayOf } from '@/lib/dates/rules';
import { layawaysListed, listLayaways } from '@/lib/layaway/reads';
import type { LayawayFacts } from '@/lib/layaway/reads/facts';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { standingWords } from './standing-words';

export const metadata: Metadata = { title: 'Layaways' };

/** What is put away and paid off in parts: those who are late first. */
export default async function LayawaysPage() {
  const actor = await requireActor('stock.hold');
  const { timeZone } = await getGallery();
  const { open, ended } = await listLayaways(actor, dayOf(now(), timeZone));
  return (
    <>
      <PageHead title="Layaways" lead="Put away for somebody, and paid off in parts.">
        <ButtonLink href="/layaways/new" size="counter">
          Put a piece away
        </ButtonLink>
      </PageHead>
      <InThisRoom room="counter" here="layaways" roles={actor.roles} />
      {open.length > 0 ? (
        <Section title="Running">
          <Rows layaways={open} />
        </Section>
      ) : (
        <Empty
          title="Nothing is put away"
          act={
            <ButtonLink href="/layaways/new" size="counter">
              Put the first piece away
            </ButtonLink>
          }
        >
          Somebody who wants a piece and pays it in parts gets a written statement: what, how much,
          until when. The piece is kept back for them until it is paid off.
        </Empty>
      )}
      {ended.length > 0 ? (
        <Section title="Ended of late">
          <Rows layaways={ended} />
        </Section>
      ) : null}
      {open.length >= layawaysListed ? (
        <p className={css['quiet']}>The first {layawaysListed}, by their last day.</p>
      ) : null}
    </>
  );
}

function Rows({ layaways }: Readonly<{ layaways: readonly LayawayFacts[] }>) {
  return (
    <ul className={css['rows']}>
      {layaways.map((layaway) => (
        <Row key={layaway.id} layaway={layaway} />
      ))}
    </ul>
  );
}

function Row({ layaway }: Readonly<{ layaway: LayawayFacts }>) {
  const { number, collector, lines, money, standing, endedAt } = layaway;
  return (
    <li className={css['row']}>
      <Link href={`/layaways/${number}`} className={css['plain']}>
        <span className={css['words']}>
          <span className={css['who']}>{collector.name}</span>
          <span className={css['title']}>{lines.map((line) => line.title).join(', ')}</span>
          <span className={looks[standing]}>{standingWords(layaway)}</span>
          {standing === 'running' && money.next ? (
            <span className={css['quiet']}>
              next <Money cents={money.next.amountCents} /> by <DayText day={money.next.dueOn} />
            </span>
          ) : null}
        </span>
      </Link>
      <dl className={css['sums']}>
        <div>
          <dt>Paid</dt>
          <dd>
            <Money cents={money.paidCents} />
          </dd>
        </div>
        {endedAt === null ? (
          <div>
            <dt>Still to pay</dt>
            <dd>
              <Money cents={money.remainingCents} size="strong" />
            </dd>
          </div>
        ) : null}
      </dl>
    </li>
  );
}

const looks = {
  late: css['late'],
  paid_off: css['due'],
  running: '',
  handed_over: css['quiet'],
  cancelled: css['quiet'],
};
