import type { Metadata } from 'next';
import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { listPlaces, listStanding, type PlaceListed } from '@/lib/stock/reads/moves/places';
import { lookAtPlace, showReady, type Looked } from '@/lib/stock/reads/moves/ready';
import { writeReady } from '@/lib/stock/rules/moves/move';
import { Leaves } from '../../leaves';
import { idOf, readAddress, readyHref, type Query, type ReadyAddress } from '../ready/address';
import { ReadyList } from '../ready/ready-list';
import css from '../ready/ready.module.css';
import { ScanField } from '../ready/scan-field';
import { ToTouch } from '../ready/to-touch';
import { MoveIt } from './move-it';

export const metadata: Metadata = { title: 'Move pieces' };

type MovePageProps = Readonly<{ searchParams: Promise<Query> }>;

/** Moves pieces: say from where and to where, scan them one after another, move them. */
export default async function MovePage({ searchParams }: MovePageProps) {
  const actor = await requireActor('stock.move');
  const query = await searchParams;
  const places = (await listPlaces(actor)).filter((place) => !place.isClosed);
  const from = idOf(query, 'from') || (places.find((place) => place.isCounter)?.id ?? '');
  const to = idOf(query, 'to');
  const asked = readAddress('/stock/places/move', query, { from, to });
  const { find, ready } = asked;
  const looked = await lookAtPlace(actor, { fromId: from, find, ready });
  const address = looked.kind === 'laid' ? { ...asked, ready: looked.ready } : asked;
  const lines = await showReady(actor, { fromId: from, toId: to, ready: address.ready });
  const pieces = lines.reduce((sum, line) => sum + line.quantity, 0);
  return (
    <>
      <PageHead title="Move pieces" back={{ href: '/stock/places', name: 'Places and moves' }} />
      <InThisRoom room="stock" here="places" roles={actor.roles} />
      <div className={css['desk']}>
        <div className={css['side']}>
          <FromAndTo places={places} address={address} from={from} to={to} />
          <ScanField
            path={address.path}
            kept={address.kept}
            ready={writeReady(address.ready)}
            find={looked.kind === 'laid' ? '' : find}
            label="Scan a piece"
            hint="Its tag, its number, or three letters. An edition with its number behind: CODE 7."
          />
          <WhatThere actor={actor} address={address} looked={looked} />
        </div>
        <div className={css['side']}>
          <Slab>
            <h2>Lies ready</h2>
            <ReadyList address={address} lines={lines} />
            {lines.length > 0 ? (
              <>
                <p className={css['sum']}>
                  <span>Together</span>
                  <span>{pieces}</span>
                </p>
                <MoveIt
                  key={`${from} ${to} ${writeReady(address.ready)}`}
                  from={from}
                  to={to}
                  ready={writeReady(address.ready)}
                  toName={places.find((place) => place.id === to)?.name ?? null}
                />
              </>
            ) : null}
          </Slab>
        </div>
      </div>
    </>
  );
}

type FromAndToProps = Readonly<{
  places: readonly PlaceListed[];
  address: ReadyAddress;
  from: string;
  to: string;
}>;

function FromAndTo({ places, address, from, to }: FromAndToProps) {
  const options = places.map((place) => ({
    value: place.id,
    label: `${place.name} (${place.pieces.toLocaleString('en-US')})`,
  }));
  const nowhere = { value: '', label: 'Choose' };
  return (
    <form action={address.path} className={css['choose']} key={`${from} ${to}`}>
      <input type="hidden" name="ready" value={writeReady(address.ready)} />
      <Field
        name="from"
        label="From"
        kind="select"
        size="counter"
        options={[nowhere, ...options]}
        defaultValue={from}
      />
      <Field
        name="to"
        label="To"
        kind="select"
        size="counter"
        options={[nowhere, ...options]}
        defaultValue={to}
      />
      <Button type="submit" variant="quiet" size="counter">
        Choose
      </Button>
    </form>
  );
}

type WhatThereProps = Readonly<{ actor: Actor; address: ReadyAddress; looked: Looked }>;

async function WhatThere({ actor, address, looked }: WhatThereProps) {
  if (looked.kind === 'found') {
    return <ToTouch address={address} pieces={looked.pieces} label="Found" />;
  }
  const from = address.kept['from'] ?? '';
  const wish = { letters: '', page: address.page, limit: 24 };
  const standing = from === '' ? null : await listStanding(actor, from, wish);
  return (
    <>
      {looked.kind === 'told' ? <Notice kind="refused">{looked.sentence}</Notice> : null}
      {standing && standing.pieces.length > 0 ? (
        <>
          <ToTouch address={address} pieces={standing.pieces} label="What stands there" />
          <Leaves
            page={standing.page}
            pages={standing.pages}
            hrefOf={(leaf) => readyHref(address, address.ready, leaf)}
          />
        </>
      ) : (
        <Empty title="Nothing stands there">
          Choose the place from which pieces go. What stands there can be touched here.
        </Empty>
      )}
    </>
  );
}
