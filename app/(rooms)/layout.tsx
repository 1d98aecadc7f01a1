import Link from 'next/link';
import type { ReactNode } from 'react';
import { RoomRail } from '@/app/ui/rail/room-rail';
import { requireActor } from '@/lib/access/reads';
import { endRoomsFor, roomsFor } from '@/lib/access/rules';
import css from './rooms.module.css';

/** Every room: the picture rail over it, and the wall. */
export default async function RoomsLayout({ children }: Readonly<{ children: ReactNode }>) {
  const actor = await requireActor();
  return (
    <>
      <RoomRail rooms={roomsFor(actor.roles)}>
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
