import Link from 'next/link';
import { Notice } from '@/app/ui/page/notice';
import { Slab } from '@/app/ui/page/section';
import type { Actor } from '@/lib/access/rules';
import {
  listReferringDesigners,
  listTaxPlacesToChoose,
  type SlipGone,
  type SlipShown,
} from '@/lib/counter/reads';
import { counterRefusalMessage } from '@/lib/counter/rules/refusals';
import css from './counter.module.css';
import { ChangeForm } from './change-form';
import { Button } from '@/app/ui/button/button';
import { AddLines } from './extras/add-lines';
import { CollectFold, DeliveryFold, GiftFold } from './extras/delivery-fold';
import { DiscountFold } from './extras/discount-fold';
import { AsideFold, NumberFolds, PlaceFold, ReferredFold } from './extras/other-folds';
import { ForWhom } from './for-whom';
import { Pay } from './pay';
import { SlipLines } from './slip-lines';
import { SlipSums } from './slip-sums';

type SlipSideProps = Readonly<{
  actor: Actor;
  shown: SlipShown | null;
  gone: SlipGone | null;
  who: string | null;
  changed: boolean;
  /** The slip that what is put on next goes to. */
  slipId: string;
  stamp: string;
}>;

/** The slip: what is on it, for whom, what it comes to, and the money. */
export function SlipSide(props: SlipSideProps) {
  const { shown, gone, changed, stamp } = props;
  const hasLines = shown !== null && shown.slip.content.lines.length > 0;
  return (
    <Slab>
      <div className={css['slip-head']}>
        <h2>{shown?.slip.asideAs ?? 'The slip'}</h2>
        {hasLines ? (
          <Link href="/counter" prefetch={false}>
            Begin another
          </Link>
        ) : null}
      </div>
      {changed ? (
        <Notice kind="caution">
          Somebody changed this slip meanwhile, on another device. Here it is as it stands now.
        </Notice>
      ) : null}
      {gone ? <Gone gone={gone} /> : null}
      {hasLines ? (
        <SlipLines key={stamp} shown={shown} />
      ) : (
        <p className={css['quiet']}>Nothing is on it yet. What you scan or touch comes here.</p>
      )}
      <SlipSums shown={shown} />
      {hasLines ? <WithLines key={`${stamp} money`} {...props} shown={shown} /> : null}
      <AddLines slipId={props.slipId} stamp={stamp} />
    </Slab>
  );
}

function WithLines({ actor, shown, who }: SlipSideProps & { shown: SlipShown }) {
  return (
    <>
      {shown.reckoned.faults
        .filter((fault) => fault.lineId === null)
        .map(({ refusal }) => (
          <Notice key={refusal.code} kind="caution">
            {counterRefusalMessage(refusal, shown.zone)}
          </Notice>
        ))}
      <Pay shown={shown} />
      <ForWhom actor={actor} shown={shown} who={who} />
      <Extras actor={actor} shown={shown} />
    </>
  );
}

async function Extras({ actor, shown }: Readonly<{ actor: Actor; shown: SlipShown }>) {
  const [taxPlaces, designers] = await Promise.all([
    listTaxPlacesToChoose(actor),
    listReferringDesigners(actor),
  ]);
  return (
    <div className={css['folds']}>
      <NumberFolds shown={shown} />
      <DiscountFold shown={shown} />
      <DeliveryFold shown={shown} taxPlaces={taxPlaces} />
      <CollectFold shown={shown} />
      <GiftFold shown={shown} />
      <ReferredFold shown={shown} designers={designers} />
      <PlaceFold shown={shown} />
      <AsideFold shown={shown} />
    </div>
  );
}

function Gone({ gone }: Readonly<{ gone: SlipGone }>) {
  if (gone.code === 'slip_sold_already') {
    return (
      <Notice kind="caution">
        This slip was sold already: it is{' '}
        <Link href={`/receipts/${gone.number}`}>receipt {gone.number}</Link>. What comes next begins
        a new slip.
      </Notice>
    );
  }
  if (gone.code !== 'unknown_place') {
    return <Notice kind="caution">{counterRefusalMessage(gone, 'UTC')}</Notice>;
  }
  return (
    <Notice kind="caution" title="The fair of this slip is over">
      <ChangeForm slip={gone.slip} does="place" label="Where it is sold">
        {gone.places.map(({ placeId, name }) => (
          <Button
            key={placeId}
            {...{ type: 'submit', name: 'placeId', value: placeId }}
            {...{ variant: 'quiet', size: 'counter' }}
          >
            Sell it at {name}
          </Button>
        ))}
      </ChangeForm>
    </Notice>
  );
}
