import type { Metadata } from 'next';
import { Money } from '@/app/ui/figures/money';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed, type Actor } from '@/lib/access/rules';
import { findLastCount, findInDrawer, listCounts } from '@/lib/drawer/reads';
import { readDayMoney } from '@/lib/drawer/reads/span';
import { formatInstant } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import { Cheques, MoneySplit, Sheet } from './sheet';
import { CountForm } from './count-form';
import { CountsKept } from './counts-kept';
import { SmallCash } from './small-cash';
import { readNumber } from '@/app/(rooms)/receipts/receipt-address';
import css from './drawer.module.css';

export const metadata: Metadata = { title: 'Day’s end' };

type DrawerProps = Readonly<{ searchParams: Promise<{ before?: string | string[] }> }>;

/** What should be in the drawer, the count, and the days that were counted before. */
export default async function DrawerPage({ searchParams }: DrawerProps) {
  const actor = await requireActor('receipts.see');
  const before = readNumber([(await searchParams).before ?? ''].flat()[0] ?? '') ?? undefined;
  const [gallery, counts] = await Promise.all([getGallery(), listCounts(actor, before)]);
  const isClosing = isAllowed(actor.roles, 'counter.close_day');
  return (
    <>
      <PageHead
        title="Day’s end"
        lead="Count the drawer, leave the float, bag the rest. A counted day is never changed: what comes after belongs to the next."
      />
      <InThisRoom room="counter" here="drawer" roles={actor.roles} />
      <OpenDay actor={actor} gallery={gallery} isClosing={isClosing} />
      <Section title="Counted before" id="counted">
        <CountsKept counts={counts} zone={gallery.timeZone} />
      </Section>
    </>
  );
}

type OpenDayProps = Readonly<{ actor: Actor; gallery: Gallery; isClosing: boolean }>;

/** The money since the drawer was counted last, and the count. */
async function OpenDay({ actor, gallery, isClosing }: OpenDayProps) {
  const [last, expectedCents] = await Promise.all([findLastCount(actor), findInDrawer(actor)]);
  const span = { after: last?.at ?? null, until: now() };
  const floatCents = last?.floatCents ?? 0n;
  const money = await readDayMoney(actor, span, { floatCents, expectedCents });
  const since = last
    ? `Since it was counted on ${formatInstant(last.at, gallery.timeZone)}.`
    : 'It was never counted yet: the first count takes everything since the gallery began.';
  return (
    <Columns
      wide={
        <>
          <Section title="Should be in the drawer" lead={since}>
            <p>
              <Money cents={expectedCents} size="total" />
            </p>
            <Sheet lines={money.sheet} expectedCents={expectedCents} />
          </Section>
          {isClosing ? (
            <Section title="Count it">
              <CountForm expectedCents={expectedCents} floatCents={gallery.drawerFloatCents} />
            </Section>
          ) : null}
        </>
      }
      beside={
        <div className={css['beside']}>
          <MoneySplit money={money} />
          <Cheques cheques={money.cheques} />
          {isClosing ? <SmallCash /> : null}
        </div>
      }
    />
  );
}
