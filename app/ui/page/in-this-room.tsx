import Link from 'next/link';
import type { Role } from '@/lib/access/rules';
import { pagesOf, type RoomWithPages } from '@/lib/access/rules/rooms';
import css from './page.module.css';

const roomNames: Readonly<Record<RoomWithPages, string>> = {
  counter: 'At the counter',
  stock: 'In the stock room',
  studio: 'In the studio',
  diary: 'In the diary',
  settings: 'How the gallery works',
};

type InThisRoomProps = Readonly<{
  room: RoomWithPages;
  /** The key of the page one is on. */
  here: string;
  roles: readonly Role[];
}>;

/** The pages of a room, as a row of links under the head; the one that one is on is pressed in. */
export function InThisRoom({ room, here, roles }: InThisRoomProps) {
  return (
    <nav aria-label={roomNames[room]} className={`${css['in-this-room']} not-on-paper`}>
      <ul className={css['views']}>
        {pagesOf(room, roles).map((page) => (
          <li key={page.key}>
            <Link
              href={page.href}
              prefetch={false}
              aria-current={page.key === here ? 'page' : undefined}
            >
              {page.name}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
