import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { readNumber } from '@/app/(rooms)/holds/[number]/read-number';
import css from '@/app/(rooms)/holds/holds.module.css';
import { Phone } from '@/app/(rooms)/holds/phone';
import { ButtonLink } from '@/app/ui/button/button';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { findLayaway } from '@/lib/layaway/reads';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { standingWords } from '../standing-words';
import { CancelIt, HandItOver, PayNow } from './acts';
import { Dues, Payments, Pieces, Sums } from './statement';

export const metadata: Metadata = { title: 'A layaway' };

type LayawayPageProps = Readonly<{ params: Promise<{ number: string }> }>;

/** One layaway: the statement, what is paid, and what can be done. */
export default async function LayawayPage({ params }: LayawayPageProps) {
  const actor = await requireActor('stock.hold');
  const { timeZone } = await getGallery();
  const number = readNumber((await params).number);
  const on = dayOf(now(), timeZone);
  const layaway = number === null ? null : await findLayaway(actor, number, on);
  if (!layaway) notFound();
  const { collector, endedAt, money, terms } = layaway;
  const isOwner = isAllowed(actor.roles, 'settings.keep');
  return (
    <>
      <PageHead
        title={`Layaway ${layaway.number}`}
        lead={
          <>
            For <Link href={`/collectors/${collector.id}`}>{collector.name}</Link>.{' '}
            {standingWords(layaway)}
          </>
        }
        back={{ href: '/layaways', name: 'Layaways' }}
      >
        <ButtonLink
          href={`/layaways/${layaway.number}/pdf`}
          variant="quiet"
          size="counter"
          download
        >
          Print the statement
        </ButtonLink>
      </PageHead>
      <InThisRoom room="counter" here="layaways" roles={actor.roles} />
      <Columns
        wide={
          <>
            <Pieces layaway={layaway} />
            <Dues layaway={layaway} />
            <Payments layaway={layaway} />
          </>
        }
        beside={
          <div className={css['all']}>
            <Sums layaway={layaway} />
            <Phone number={collector.phone} />
            {endedAt === null && money.remainingCents > 0n ? <PayNow layaway={layaway} /> : null}
            {endedAt === null && money.remainingCents === 0n ? (
              <HandItOver layaway={layaway} />
            ) : null}
            {endedAt === null ? <CancelIt layaway={layaway} mayKeep={isOwner} /> : null}
          </div>
        }
      />
      <Section title="Terms">
        <p className={css['terms']}>
          {terms === '' ? 'No terms were written in the settings when it was agreed.' : terms}
        </p>
      </Section>
    </>
  );
}
