import type { Metadata } from 'next';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { findTileWall, findWallCommission } from '@/lib/installation/reads/tiles/walls';
import { getGallery } from '@/lib/platform/settings';
import { TileBoard } from './tile-board';

export const metadata: Metadata = { title: 'Lay out a wall of tiles' };

type Asked = string | string[] | undefined;
type NewWallProps = Readonly<{ searchParams: Promise<{ commission?: Asked; from?: Asked }> }>;

/** A wall of tiles is laid out: for a commission, from one that was kept, or from nothing. */
export default async function NewWallPage({ searchParams }: NewWallProps) {
  const actor = await requireActor('installation.do');
  const asked = await searchParams;
  const { kept, commission } = await begunWith(actor, asked);
  const { lengthUnit } = await getGallery();
  return (
    <>
      <PageHead
        title="Lay out a wall of tiles"
        back={
          commission
            ? { href: `/commissions/${commission.number}`, name: `Commission ${commission.number}` }
            : { href: '/tiles-on-wall', name: 'Tiles on a wall' }
        }
        lead={
          commission ? (
            <>
              For <cite>{commission.title}</cite>.
            </>
          ) : (
            'Field tile with equal cuts, set tiles among it, and how many to order.'
          )
        }
      />
      <InThisRoom room="diary" here="tiles" roles={actor.roles} />
      <noscript>
        <Notice kind="caution">This board draws by a script, and yours are turned off.</Notice>
      </noscript>
      <TileBoard
        kept={kept?.asked ?? null}
        title={kept?.title ?? ''}
        commissionId={commission?.id ?? null}
        system={lengthUnit}
      />
    </>
  );
}

async function begunWith(actor: Actor, { commission, from }: { commission?: Asked; from?: Asked }) {
  const kept = await found(from, (number) => findTileWall(actor, number));
  const named = await found(commission, (number) => findWallCommission(actor, number));
  return { kept, commission: named ?? kept?.commission ?? null };
}

async function found<Value>(
  asked: Asked,
  find: (number: number) => Promise<Value | null>,
): Promise<Value | null> {
  const isNumber = typeof asked === 'string' && /^[1-9]\d{0,8}$/.test(asked);
  return isNumber ? find(Number(asked)) : null;
}
