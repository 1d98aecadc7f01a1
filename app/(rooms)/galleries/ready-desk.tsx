import type { ReactNode } from 'react';
import { Empty } from '@/app/ui/page/empty';
import { Notice } from '@/app/ui/page/notice';
import { Slab } from '@/app/ui/page/section';
import type { ReadyAddress } from '@/app/(rooms)/stock/places/ready/address';
import { readyHref } from '@/app/(rooms)/stock/places/ready/address';
import { ReadyList } from '@/app/(rooms)/stock/places/ready/ready-list';
import css from '@/app/(rooms)/stock/places/ready/ready.module.css';
import { ScanField } from '@/app/(rooms)/stock/places/ready/scan-field';
import { ToTouch } from '@/app/(rooms)/stock/places/ready/to-touch';
import { Leaves } from '@/app/(rooms)/stock/leaves';
import type { Actor } from '@/lib/access/rules';
import { listStanding } from '@/lib/stock/reads/moves/places';
import { lookAtPlace, showReady } from '@/lib/stock/reads/moves/ready';
import { writeReady } from '@/lib/stock/rules/moves/move';

type ReadyDeskProps = Readonly<{
  actor: Actor;
  asked: ReadyAddress;
  fromId: string;
  toId: string;
  /** Above the field: where they come from, or go. */
  above?: ReactNode;
  /** Under what lies ready, given as the address keeps it. */
  act: (ready: string) => ReactNode;
}>;

/** The desk on which pieces are laid ready: scan or touch at the left, what lies there at the right. */
export async function ReadyDesk({ actor, asked, fromId, toId, above, act }: ReadyDeskProps) {
  const { find, ready } = asked;
  const looked = await lookAtPlace(actor, { fromId, find, ready });
  const address = looked.kind === 'laid' ? { ...asked, ready: looked.ready } : asked;
  const lines = await showReady(actor, { fromId, toId, ready: address.ready });
  const pieces = lines.reduce((sum, line) => sum + line.quantity, 0);
  return (
    <div className={css['desk']}>
      <div className={css['side']}>
        {above}
        <ScanField
          path={address.path}
          kept={address.kept}
          ready={writeReady(address.ready)}
          find={looked.kind === 'laid' ? '' : find}
          label="Scan a piece"
          hint="Its tag, its number, or three letters. An edition with its number behind: CODE 7."
        />
        {looked.kind === 'told' ? <Notice kind="refused">{looked.sentence}</Notice> : null}
        {looked.kind === 'found' ? (
          <ToTouch address={address} pieces={looked.pieces} label="Found" />
        ) : (
          <Standing actor={actor} address={address} fromId={fromId} />
        )}
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
              {act(writeReady(address.ready))}
            </>
          ) : null}
        </Slab>
      </div>
    </div>
  );
}

type StandingProps = Readonly<{ actor: Actor; address: ReadyAddress; fromId: string }>;

async function Standing({ actor, address, fromId }: StandingProps) {
  const wish = { letters: '', page: address.page, limit: 24 };
  const standing = fromId === '' ? null : await listStanding(actor, fromId, wish);
  if (!standing || standing.pieces.length === 0) {
    return (
      <Empty title="Nothing stands there">
        Choose the place from which pieces go. What stands there can be touched here.
      </Empty>
    );
  }
  return (
    <>
      <ToTouch address={address} pieces={standing.pieces} label="What stands there" />
      <Leaves
        page={standing.page}
        pages={standing.pages}
        hrefOf={(leaf) => readyHref(address, address.ready, leaf)}
      />
    </>
  );
}
