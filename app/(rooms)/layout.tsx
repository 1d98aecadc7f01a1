import Link from 'next/link';
import type { ReactNode } from 'react';
import { RoomRail } from '@/app/ui/rail/room-rail';
import { requireActor } from '@/lib/access/reads';
import { endRoomsFor, roomsFor } from '@/lib/access/rules';
import { addressesOf } from '@/lib/access/rules/rooms';
import css from './rooms.module.css';

/** Every room: the picture rail over it, and the wall. */
export default async function RoomsLayout({ children }: Readonly<{ children: ReactNode }>) {
  const actor = await requireActor();
  const rooms = roomsFor(actor.roles).map((room) => ({ ...room, also: addressesOf(room.href) }));
  return (
    <>
      <RoomRail rooms={rooms}>
        {endRoomsFor(actor.roles).map((door) => (
          <Link key={door.href} href={door.href}>
            {door.name}
          </Link>
        ))}
        <Link href="/staff/you">{actor.name}</Link>
        <Link href="/sign-out" prefetch={false}>
          Sign out
        </Link>
      </RoomRail>
      <main id="wall" className={css['wall']} tabIndex={-1}>
        {children}
      </main>
    </>
  );
}
