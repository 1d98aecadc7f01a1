import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { findAtCounter, type Found } from '@/lib/sales/reads/counter';
import { findReceipt } from '@/lib/sales/reads/receipts';
import { getSlip } from '@/lib/sales/reads/slip';
import { putOn, writeSlip } from '@/lib/sales/rules/slip';
import { readPlace, type CounterPlace, type CounterQuery } from './address';
import css from './counter.module.css';
import { FindField } from './find-field';
import { ForWhom } from './for-whom';
import { Pay } from './pay';
import { SearchSide, ShortOf } from './search-side';
import { SlipLines, SlipSums } from './slip-lines';
import { Sold } from './sold';

export const metadata: Metadata = { title: 'Counter' };

type CounterProps = Readonly<{ searchParams: Promise<CounterQuery> }>;

/** The counter: find a piece, put it on the slip, take the money. */
export default async function CounterPage({ searchParams }: CounterProps) {
  const actor = await requireActor('counter.sell');
  const asked = readPlace(await searchParams);
  const at = now();
  const [gallery, found] = await Promise.all([getGallery(), findAtCounter(actor, asked.find)]);
  const place = putStraightOn(asked, found);
  return (
    <>
      <PageHead title="Counter">
        <ButtonLink href="/receipts" variant="quiet" size="counter">
          Today’s receipts
        </ButtonLink>
      </PageHead>
      <div className={css['counter']}>
        <div className={css['left']}>
          <FindField
            find={found.kind === 'exactly' && !place.typing ? '' : place.find}
            slip={writeSlip(place.slip)}
            collectorId={place.collectorId ?? ''}
          />
          <ShortOf actor={actor} place={place} at={at} />
          <SearchSide
            actor={actor}
            found={found}
            place={place}
            lengthUnit={gallery.lengthUnit}
            at={at}
          />
        </div>
        <div className={css['right']}>
          <SlipSide actor={actor} place={place} at={at} />
        </div>
      </div>
    </>
  );
}

/** A whole SKU or code goes onto the slip at once, if one of it is still to be had. */
function putStraightOn(place: CounterPlace, found: Found): CounterPlace {
  if (found.kind !== 'exactly' || place.typing) return place;
  const { code, onHand } = found.piece;
  const taken = place.slip.find((entry) => entry.sku === code)?.quantity ?? 0;
  if (onHand <= taken) return { ...place, shortOf: code };
  return { ...place, slip: putOn(place.slip, code), shortOf: null };
}

type SlipSideProps = Readonly<{ actor: Actor; place: CounterPlace; at: Date }>;

async function SlipSide({ actor, place, at }: SlipSideProps) {
  const receipt = place.soldNumber === null ? null : await findReceipt(actor, place.soldNumber);
  if (receipt && place.slip.length === 0) return <Sold receipt={receipt} />;
  const slip = await getSlip(actor, place.slip, at);
  return (
    <Slab>
      <div className={css['slip-head']}>
        <h2>The slip</h2>
        {place.slip.length > 0 ? (
          <Link href="/counter" prefetch={false}>
            Begin again
          </Link>
        ) : null}
      </div>
      {slip.unknown.length > 0 ? (
        <Notice kind="caution">Not in the catalogue: {slip.unknown.join(', ')}.</Notice>
      ) : null}
      {slip.taxUnknown ? (
        <Notice kind="caution">
          No sales tax rate is kept for {slip.taxPlace} today, so nothing can be sold. The owner
          keeps the rates; a rate of 0 is one too.
        </Notice>
      ) : null}
      {slip.lines.length === 0 ? (
        <p className={css['quiet']}>Nothing is on it yet. What you scan or touch comes here.</p>
      ) : (
        <SlipLines lines={slip.lines} place={place} />
      )}
      <SlipSums priced={slip.priced} />
      {slip.lines.length > 0 ? (
        <>
          <ForWhom actor={actor} place={place} />
          <Pay
            key={`${writeSlip(place.slip)} ${place.collectorId ?? ''}`}
            slip={slip}
            collectorId={place.collectorId}
          />
        </>
      ) : null}
    </Slab>
  );
}
