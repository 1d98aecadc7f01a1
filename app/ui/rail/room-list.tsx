'use client';

import Link, { useLinkStatus } from 'next/link';
import { usePathname } from 'next/navigation';
import css from './rail.module.css';

/** A room as the rail names it. `current` may be left out: the rail knows the page it hangs over. */
export type Room = Readonly<{
  href: string;
  name: string;
  /** Addresses that belong to the room without standing under its own. */
  also?: readonly string[];
  current?: boolean | undefined;
}>;

/** The rooms by name; the one that the page belongs to hangs forward. */
export function RoomList({ rooms }: Readonly<{ rooms: readonly Room[] }>) {
  const path = usePathname();
  return (
    <ul className={css['rooms']}>
      {rooms.map((room) => {
        const here = room.current ?? [room.href, ...(room.also ?? [])].some((at) => isIn(path, at));
        return (
          <li key={room.href}>
            <Link href={room.href} className={css['room']} aria-current={here ? 'page' : undefined}>
              <RoomName name={room.name} />
            </Link>
          </li>
        );
      })}
    </ul>
  );
}

/** The name of a room, marked while its page is on the way. */
function RoomName({ name }: Readonly<{ name: string }>) {
  const { pending } = useLinkStatus();
  return (
    <span className={css['name']} data-pending={pending || undefined}>
      {name}
    </span>
  );
}

function isIn(path: string, href: string): boolean {
  return href === '/' ? path === '/' : path === href || path.startsWith(`${href}/`);
}
