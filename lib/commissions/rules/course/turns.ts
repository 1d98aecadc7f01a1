import type { Permission } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import type { Where } from './where';

/** Whose clock is running. */
export type WaitsOn = 'collector' | 'studio' | 'gallery' | 'installer' | 'nobody';

/** Where it stands, whom it waits on, since which day, and who may do the next thing. */
export type Standing = {
  readonly where: Where;
  readonly waitsOn: WaitsOn;
  readonly since: Day;
  /** The permission that the next thing takes; null when there is nothing left to do. */
  readonly permission: Permission | null;
};

/** The collector's turn: to answer, or to pay. */
export function ofCollector(where: Where, since: Day): Standing {
  const takesMoney = where.key === 'deposit_asked' || where.key === 'rest_owed';
  const permission = takesMoney ? 'commissions.take_money' : 'commissions.write';
  return { where, waitsOn: 'collector', since, permission };
}

/** The studio's turn. */
export function ofStudio(where: Where, since: Day, permission: Permission): Standing {
  return { where, waitsOn: 'studio', since, permission };
}

/** The gallery's turn. */
export function ofGallery(where: Where, since: Day, permission: Permission): Standing {
  return { where, waitsOn: 'gallery', since, permission };
}

/** The later of two days; the other may not have come. */
export function later(one: Day, other: Day | null): Day {
  return other !== null && other > one ? other : one;
}
