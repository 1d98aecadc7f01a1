import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { listTileWalls } from '@/lib/installation/reads/tiles/walls';
import { getGallery } from '@/lib/platform/settings';
import { formatSize } from '@/lib/units/rules';

export const metadata: Metadata = { title: 'Tiles on a wall' };

/** The walls of tiles that were laid out, the newest first. */
export default async function TileWallsPage() {
  const actor = await requireActor('installation.do');
  const [walls, { lengthUnit, timeZone }] = await Promise.all([listTileWalls(actor), getGallery()]);
  return (
    <>
      <PageHead
        title="Tiles on a wall"
        lead="A kitchen, a hearth, a patio: relief among field tile, with equal cuts, drawn to scale."
      >
        <ButtonLink href="/tiles-on-wall/new" size="counter">
          Lay out a wall
        </ButtonLink>
      </PageHead>
      <InThisRoom room="diary" here="tiles" roles={actor.roles} />
      {walls.length === 0 ? (
        <Empty
          title="No wall yet"
          act={<ButtonLink href="/tiles-on-wall/new">Lay one out</ButtonLink>}
        >
          Type how wide and high it is and how large the field tile; set reliefs by touching the
          drawing. It says how many to make, and prints for the tile contractor.
        </Empty>
      ) : (
        <Table
          caption="Walls of tiles, the newest first"
          captionHeardOnly
          columns={[
            { name: 'Wall' },
            { name: 'Size' },
            { name: 'Set tiles', figure: true },
            { name: 'For', wideOnly: true },
            { name: 'Laid out', wideOnly: true },
          ]}
          rows={walls.map(({ number, title, asked, commission, by, at }) => ({
            key: String(number),
            cells: [
              <Link key="title" href={`/tiles-on-wall/${number}`}>
                {title}
              </Link>,
              formatSize(asked, lengthUnit),
              String(asked.sets.length),
              commission ? (
                <Link key="for" href={`/commissions/${commission.number}`}>
                  Commission {commission.number}
                </Link>
              ) : (
                'no commission'
              ),
              <span key="at">
                {by}, <InstantText at={at} zone={timeZone} />
              </span>,
            ],
          }))}
        />
      )}
    </>
  );
}
