import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Section } from '@/app/ui/page/section';
import { isAllowed, type Actor } from '@/lib/access/rules';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { listTileWalls } from '@/lib/installation/reads/tiles/walls';
import { formatSize } from '@/lib/units/rules';
import css from '../commissions.module.css';

/** The walls of tiles that were laid out for it; nothing for those who lay none out. */
export async function TileWallLines({ sheet, actor }: Readonly<{ sheet: Sheet; actor: Actor }>) {
  if (!isAllowed(actor.roles, 'installation.do')) return null;
  const walls = await listTileWalls(actor, sheet.id);
  return (
    <Section
      title="Tiles on a wall"
      id="tiles"
      act={
        <ButtonLink href={`/tiles-on-wall/new?commission=${sheet.number}`} variant="quiet">
          Lay out a wall
        </ButtonLink>
      }
    >
      {walls.length === 0 ? (
        <p className={css['quiet']}>Nothing was laid out for it.</p>
      ) : (
        <ul className={css['lines']}>
          {walls.map(({ number, title, asked }) => (
            <li key={number}>
              <Link href={`/tiles-on-wall/${number}`}>{title}</Link>,{' '}
              {formatSize(asked, sheet.gallery.lengthUnit)}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
