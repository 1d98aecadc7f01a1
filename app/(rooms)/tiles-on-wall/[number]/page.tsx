import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { InstantText } from '@/app/ui/figures/day-text';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { getGallery } from '@/lib/platform/settings';
import { layTiles } from '@/lib/walls/rules/tiles/layout';
import { tileRefusalMessage } from '@/lib/walls/rules/tiles/refusals';
import { readWallOf, type WallParams } from '../read-wall';
import { WallDrawing } from '../wall-drawing';
import { WallTold } from '../wall-told';
import css from '../tiles.module.css';

type WallPageProps = Readonly<{
  params: WallParams;
  searchParams: Promise<{ done?: string | string[] }>;
}>;

export async function generateMetadata({ params }: WallPageProps) {
  const wall = await readWallOf(await requireActor('installation.do'), params);
  return { title: wall ? wall.title : 'Tiles on a wall' };
}

/** A wall of tiles as it was kept: the drawing, what to order, where everything is. */
export default async function WallPage({ params, searchParams }: WallPageProps) {
  const actor = await requireActor('installation.do');
  const wall = await readWallOf(actor, params);
  if (!wall) notFound();
  const { number, title, asked, commission, by, at } = wall;
  const { lengthUnit, timeZone } = await getGallery();
  const laid = layTiles(asked);
  return (
    <>
      <PageHead
        title={title}
        back={{ href: '/tiles-on-wall', name: 'Tiles on a wall' }}
        lead={
          <>
            {commission ? (
              <>
                For{' '}
                <Link href={`/commissions/${commission.number}`}>
                  commission {commission.number}, <cite>{commission.title}</cite>
                </Link>
                .{' '}
              </>
            ) : null}
            Laid out by {by}, <InstantText at={at} zone={timeZone} />.
          </>
        }
      >
        <ButtonLink href={`/tiles-on-wall/${number}/pdf`}>Print it for the setter</ButtonLink>
        <ButtonLink href={`/tiles-on-wall/new?from=${number}`} variant="quiet">
          Change it, as another
        </ButtonLink>
      </PageHead>
      <InThisRoom room="diary" here="tiles" roles={actor.roles} />
      {(await searchParams).done === 'kept' ? (
        <Notice kind="done">The wall is kept. What is changed from here is kept as another.</Notice>
      ) : null}
      {laid.ok ? (
        <div className={css['drawn']}>
          <WallDrawing asked={asked} layout={laid.value} system={lengthUnit} />
          <WallTold asked={asked} layout={laid.value} system={lengthUnit} />
        </div>
      ) : (
        <Notice kind="refused">{tileRefusalMessage(laid.refusal)}</Notice>
      )}
    </>
  );
}
