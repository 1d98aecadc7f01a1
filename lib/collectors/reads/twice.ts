import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayOf, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { addressLine, type CollectorKind, type Reach } from '../rules';
import { likelyPairs, likenessWords, type Known } from '../rules/twice';

/** The most pairs that are shown, and the most people that are looked at. */
export const pairsListed = 100;
const peopleMost = 20_000;

/** One of a pair, as the page shows them side by side. */
export type OneOfTwo = {
  id: string;
  kind: CollectorKind;
  name: string;
  firm: string | null;
  email: string | null;
  phone: string | null;
  address: string | null;
  sales: number;
  commissions: number;
  addedOn: Day;
};

/** Two that are likely the same, and why. */
export type PairShown = {
  one: OneOfTwo;
  other: OneOfTwo;
  /** Full sentences. */
  why: string[];
  /** The day on which somebody set these two apart; null when nobody did. */
  setApartOn: Day | null;
};

const reachSelect = { name: true, firm: true, email: true, phone: true, city: true } as const;
const select = {
  ...{ id: true, kind: true, ...reachSelect, street: true, state: true, postcode: true },
  ...{ createdAt: true, _count: { select: { sales: true, commissions: true } } },
  people: { select: { name: true, email: true, phone: true } },
  addresses: { select: { city: true, postcode: true } },
  merged: { select: { ...reachSelect, postcode: true, people: { select: { name: true } } } },
} as const;

/**
 * Pairs of the address book that are likely one, those with more reasons first; pairs that were set
 * apart by hand come last.
 *
 * @returns at most a hundred
 */
export async function listTwice(actor: Actor): Promise<PairShown[]> {
  assertAllowed(actor, 'collectors.merge');
  const [rows, apart, { timeZone }] = await Promise.all([
    db().collector.findMany({
      where: { mergedIntoId: null, erasedAt: null },
      select,
      orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
      take: peopleMost,
    }),
    db().collectorMerge.findMany({
      where: { undoneAt: { not: null } },
      select: { keptId: true, goneId: true, undoneAt: true },
      orderBy: { undoneAt: 'asc' },
    }),
    getGallery(),
  ]);
  const byId = new Map(rows.map((row) => [row.id, shownOf(row, timeZone)]));
  const apartAt = new Map(
    apart.map(({ keptId, goneId, undoneAt }) => [pairKey(keptId, goneId), undoneAt]),
  );
  const pairs = likelyPairs(rows.map(knownOf)).flatMap(({ oneId, otherId, why }) => {
    const [one, other] = [byId.get(oneId), byId.get(otherId)];
    if (!one || !other) return [];
    const at = apartAt.get(pairKey(oneId, otherId)) ?? null;
    return { one, other, why: why.map(likenessWords), setApartOn: at && dayOf(at, timeZone) };
  });
  return pairs
    .toSorted((a, b) => Number(a.setApartOn !== null) - Number(b.setApartOn !== null))
    .slice(0, pairsListed);
}

function pairKey(one: string, other: string): string {
  return [one, other].sort().join(' ');
}

type Row = Reach & {
  id: string;
  kind: CollectorKind;
  name: string;
  firm: string | null;
  createdAt: Date;
  _count: { sales: number; commissions: number };
  people: { name: string; email: string | null; phone: string | null }[];
  addresses: { city: string; postcode: string }[];
  merged: (Pick<Reach, 'email' | 'phone' | 'city' | 'postcode'> & {
    name: string;
    firm: string | null;
    people: { name: string }[];
  })[];
};

function knownOf(row: Row): Known {
  const entries = [row, ...row.merged];
  const present = (texts: readonly (string | null)[]) => texts.filter((text) => text !== null);
  return {
    id: row.id,
    names: present([
      ...entries.flatMap(({ name, firm }) => [name, firm]),
      ...entries.flatMap(({ people }) => people.map((person) => person.name)),
    ]),
    emails: present([...entries, ...row.people].map(({ email }) => email)),
    phones: present([...entries, ...row.people].map(({ phone }) => phone)),
    places: [...entries, ...row.addresses].map(({ postcode, city }) => ({ postcode, city })),
  };
}

function shownOf(row: Row, zone: string): OneOfTwo {
  const { id, kind, name, firm, email, phone, createdAt, _count } = row;
  return {
    ...{ id, kind, name, firm, email, phone, address: addressLine(row), ..._count },
    addedOn: dayOf(createdAt, zone),
  };
}
