import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listMakeNext, type MakeNextList } from '@/lib/reports/reads/make-next';
import { PieceToBegin } from './piece-to-begin';
import css from './make-next.module.css';

export const metadata: Metadata = { title: 'What to make next' };

/** What to make next: what ran low, how many to begin, and what would be lost without. */
export default async function MakeNextPage() {
  const actor = await requireActor('stock.see');
  const { counterId: floorId, timeZone: zone } = await getGallery();
  const list = await listMakeNext(actor, { floorId, zone, todayOn: dayOf(now(), zone) });
  const mayMake = isAllowed(actor.roles, 'studio.move');
  return (
    <>
      <PageHead title="What to make next" lead={leadOf(list)} />
      <InThisRoom room="stock" here="next" roles={actor.roles} />
      {list.pieces.length === 0 ? <Enough list={list} /> : null}
      <ol className={css['list']} aria-label="What to make next">
        {list.pieces.map((piece) => (
          <PieceToBegin key={piece.skuId} piece={piece} mayMake={mayMake} />
        ))}
      </ol>
    </>
  );
}

function leadOf({ pieces, toBegin, lookedAt }: MakeNextList): string {
  const looked = `${lookedAt} ${lookedAt === 1 ? 'piece was' : 'pieces were'} looked at.`;
  if (toBegin === 0) return looked;
  const more = toBegin > pieces.length ? ` The first ${pieces.length} are shown.` : '';
  return `${toBegin} ran low, those first whose lack would cost the most.${more} ${looked}`;
}

function Enough({ list }: Readonly<{ list: MakeNextList }>) {
  if (list.lookedAt === 0) {
    return (
      <Empty
        title="Nothing can be reckoned yet"
        act={<ButtonLink href="/stock">See the stock</ButtonLink>}
      >
        Once pieces stand in the gallery and some are sold, this page says which to make again and
        how many.
      </Empty>
    );
  }
  return (
    <Empty title="There is enough of everything">
      Nothing that is made again has run low, with what is in the making counted in.
    </Empty>
  );
}
