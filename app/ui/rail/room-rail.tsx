import Link from 'next/link';
import type { ReactNode } from 'react';
import { MoreRooms } from './more-rooms';
import { RoomList, type Room } from './room-list';
import css from './rail.module.css';

type RoomRailProps = Readonly<{
  rooms: readonly Room[];
  /** What stands at the rail's end: further links, the person's name, signing out. */
  children?: ReactNode;
}>;

const withinReach = 4;

/**
 * The picture rail from which the rooms hang by name: along the top, or on a phone at the bottom
 * in the thumb's reach, the first four rooms and all of them under "More".
 */
export function RoomRail({ rooms, children }: RoomRailProps) {
  return (
    <>
      <a href="#wall" className={css['skip']}>
        Go to the page itself
      </a>
      <header className={css['top']}>
        <div className={css['strip']}>
          <Link href="/" className={css['house']}>
            Kiln &amp; Counter
          </Link>
          <div className={css['end']}>{children}</div>
        </div>
        <nav aria-label="Rooms" className={css['rail']}>
          <RoomList rooms={rooms} />
        </nav>
      </header>
      <nav aria-label="Rooms within reach" className={css['reach']}>
        <RoomList rooms={rooms.slice(0, withinReach)} />
        <MoreRooms>
          <RoomList rooms={rooms} />
          <div className={css['more-end']}>{children}</div>
        </MoreRooms>
      </nav>
    </>
  );
}
