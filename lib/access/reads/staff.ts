import 'server-only';
import { db } from '@/lib/platform/db/client';
import { assertAllowed } from '../reads';
import type { Actor, Role } from '../rules';
import { idleLimitMs, sessionAgeMostS } from '../session';

const staffMost = 200;
const sessionsMost = 50;

/** Someone who works here, as the owner's list shows them. */
export type StaffSummary = {
  id: string;
  name: string;
  signInName: string;
  roles: readonly Role[];
  active: boolean;
  /** How many browsers are signed in. */
  openSessions: number;
  /** The latest request of any of their browsers; null when they were never here. */
  seenAt: Date | null;
};

/** A browser that is signed in. */
export type OpenSession = { id: string; device: string; openedAt: Date; seenAt: Date };

/** Everyone who works or worked here: those with access first, then by name. */
export async function listStaff(actor: Actor, at: Date): Promise<StaffSummary[]> {
  assertAllowed(actor, 'staff.keep');
  const people = await db().staff.findMany({
    orderBy: [{ active: 'desc' }, { name: 'asc' }, { id: 'asc' }],
    take: staffMost,
    select: {
      id: true,
      name: true,
      signInName: true,
      roles: true,
      active: true,
      sessions: { orderBy: { seenAt: 'desc' }, take: 1, select: { seenAt: true } },
      _count: { select: { sessions: { where: stillOpen(at) } } },
    },
  });
  return people.map(({ sessions, _count, ...person }) => ({
    ...person,
    openSessions: _count.sessions,
    seenAt: sessions[0]?.seenAt ?? null,
  }));
}

/** One person with the browsers they are signed in with; null for a stranger's id. */
export async function findStaff(
  actor: Actor,
  id: string,
  at: Date,
): Promise<(Omit<StaffSummary, 'openSessions' | 'seenAt'> & { sessions: OpenSession[] }) | null> {
  assertAllowed(actor, 'staff.keep');
  return db().staff.findUnique({
    where: { id },
    select: {
      id: true,
      name: true,
      signInName: true,
      roles: true,
      active: true,
      sessions: openSessions(at),
    },
  });
}

/** The browsers that one is signed in with oneself, the latest used first. */
export async function listOwnSessions(actor: Actor, at: Date): Promise<OpenSession[]> {
  assertAllowed(actor, 'self.keep');
  const { where, ...rest } = openSessions(at);
  return db().staffSession.findMany({ where: { staffId: actor.id, ...where }, ...rest });
}

function openSessions(at: Date) {
  return {
    where: stillOpen(at),
    orderBy: [{ seenAt: 'desc' as const }, { id: 'desc' as const }],
    take: sessionsMost,
    select: { id: true, device: true, openedAt: true, seenAt: true },
  };
}

function stillOpen(at: Date) {
  return {
    endedAt: null,
    seenAt: { gte: new Date(at.getTime() - idleLimitMs) },
    openedAt: { gte: new Date(at.getTime() - sessionAgeMostS * 1000) },
  };
}
