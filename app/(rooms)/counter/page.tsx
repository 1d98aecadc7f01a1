import type { Metadata } from 'next';
import { freshKey } from '@/app/ui/form/fresh-key';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import type { Actor, Doer } from '@/lib/access/rules';
import { getSlip, type SlipGone, type SlipShown } from '@/lib/counter/reads';
import { findAtCounter } from '@/lib/counter/reads/find';
import { onTheSlip } from '@/lib/counter/rules/change';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { findReceipt } from '@/lib/sales/reads/receipts';
import { readPlace, type CounterQuery } from './address';
import css from './counter.module.css';
import { FindField } from './find-field';
import type { Onto } from './results';
import { SearchSide, ShortOf } from './search-side';
import { SlipSide } from './slip-side';
import { Sold } from './sold';

export const metadata: Metadata = { title: 'Counter' };

type CounterProps = Readonly<{ searchParams: Promise<CounterQuery> }>;

/** The counter: find a piece, put it on the slip, take the money. */
export default async function CounterPage({ searchParams }: CounterProps) {
  const actor = await requireActor('counter.sell');
  const place = readPlace(await searchParams);
  const at = now();
  const [{ shown, gone }, receipt] = await Promise.all([
    slipOf({ actor, at }, place.slipId),
    place.soldNumber === null ? null : findReceipt(actor, place.soldNumber),
  ]);
  const newSlipId = freshKey();
  const onto = {
    slipId: shown?.slip.id ?? newSlipId,
    stamp: shown ? `${shown.slip.id} ${shown.slip.version}` : `sold ${place.soldNumber ?? ''}`,
    taken: takenOf(shown),
  };
  return (
    <>
      <PageHead title="Counter" />
      <InThisRoom room="counter" here="slip" roles={actor.roles} />
      <div className={css['counter']}>
        <div className={css['left']}>
          <FindField
            find={place.find}
            slipId={shown?.slip.id ?? null}
            newSlipId={newSlipId}
            requestKey={freshKey()}
            stamp={onto.stamp}
          />
          <ShortOf actor={actor} code={place.shortOf} taken={onto.taken} at={at} />
          <Search actor={actor} find={place.find} onto={onto} shown={shown} at={at} />
        </div>
        <div className={css['right']}>
          {receipt && !shown ? (
            <Sold receipt={receipt} />
          ) : (
            <SlipSide
              {...{ actor, shown, gone, slipId: onto.slipId, stamp: onto.stamp }}
              who={place.who}
              changed={place.changed}
            />
          )}
        </div>
      </div>
    </>
  );
}

type SearchProps = Readonly<{
  actor: Actor;
  find: string;
  onto: Onto;
  shown: SlipShown | null;
  at: Date;
}>;

async function Search({ actor, find, onto, shown, at }: SearchProps) {
  const where = { placeId: shown?.slip.placeId ?? null, at };
  const [gallery, found] = await Promise.all([getGallery(), findAtCounter(actor, find, where)]);
  const { lengthUnit } = gallery;
  return <SearchSide {...{ actor, found, find, onto, lengthUnit, where }} />;
}

async function slipOf(
  doer: Doer,
  slipId: string | null,
): Promise<{ shown: SlipShown | null; gone: SlipGone | null }> {
  if (slipId === null) return { shown: null, gone: null };
  const read = await getSlip(doer, slipId);
  return 'shown' in read ? { shown: read.shown, gone: null } : { shown: null, gone: read.gone };
}

function takenOf(shown: SlipShown | null): ReadonlyMap<string, number> {
  if (!shown) return new Map();
  const { facts, slip } = shown;
  return new Map(
    [...facts.pieces.keys()].map((skuId) => [skuId, onTheSlip(slip.content, skuId, facts.sets)]),
  );
}
