import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { idsOf } from '@/lib/collectors/reads/group';
import { lettersOf } from '@/lib/collectors/rules';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { factsOf } from './reads/facts';
import { factsSelect } from './reads/facts-select';
import { pictureOf, pictureSelect, type CommissionPictureShown } from './reads/picture';
import { readTelling } from './reads/telling';
import { nextWords, standingSentence, type Telling } from './rules/course/sentences';
import { standing, type Standing, type WaitsOn } from './rules/course/standing';
import type { CommissionFacts } from './rules/facts';
import type { WhereKey } from './rules/course/where';
import {
  mostOverdueFirst,
  overWords,
  pressing,
  waitsWords,
  type Pressing,
} from './rules/course/list/pressing';
import { stillGoing } from './reads/course/going';

/** The most commissions that a list shows. */
export const commissionsListed = 300;
const likenessLeast = 0.45;

/** A commission as a list shows it. */
export type CommissionInList = {
  number: number;
  title: string;
  collector: string;
  /** Where it stands, in one sentence. */
  sentence: string;
  waitsOn: WaitsOn;
  since: Day;
  where: WhereKey;
  /** What the button of the next thing says; null when there is nothing left to do. */
  next: string | null;
  promisedOn: Day | null;
  /** What is over its day, each as part of a sentence; empty when all is in time. */
  over: readonly string[];
  /** How long it waits, as a sentence; null while nobody has to do anything. */
  waits: string | null;
  picture: CommissionPictureShown | null;
};

/** A commission as the first page of the day shows it. */
export type CommissionWaiting = Pick<
  CommissionInList,
  'number' | 'title' | 'collector' | 'sentence' | 'waitsOn' | 'since'
> & { href: string; pictureUrl: string | null; picture: CommissionPictureShown | null };

const listSelect = {
  ...factsSelect,
  ...pictureSelect,
  number: true,
  title: true,
  collector: { select: { name: true } },
  sketches: {
    ...factsSelect.sketches,
    select: { ...factsSelect.sketches.select, ...pictureSelect.sketches.select },
  },
} as const satisfies Prisma.CommissionSelect;

/**
 * The commissions that are going on, the most overdue first, then the longest waiting; with letters,
 * those of any time whose title, collector or number they fit, a slip of the pen forgiven.
 *
 * @returns at most 300
 */
export async function listCommissions(actor: Actor, letters = ''): Promise<CommissionInList[]> {
  assertAllowed(actor, 'commissions.see');
  const looked = lettersOf(letters);
  if (looked !== '') return read(actor, { id: { in: await idsLike(looked) } });
  const going = await read(actor, stillGoing);
  return going.filter((each) => each.where !== 'handed_over');
}

/** Those that were handed over and paid, or ended early; the newest first. */
export async function listCommissionsOver(actor: Actor): Promise<CommissionInList[]> {
  assertAllowed(actor, 'commissions.see');
  const over = await read(actor, {
    OR: [{ handOver: { isNot: null } }, { ending: { isNot: null } }],
  });
  return over
    .filter((each) => each.where === 'handed_over' || each.where === 'ended')
    .sort((one, other) => (one.since < other.since ? 1 : -1));
}

/** The commissions of one collector under any of their names, whatever became of them. */
export async function listCommissionsOf(
  actor: Actor,
  collectorId: string,
): Promise<CommissionInList[]> {
  assertAllowed(actor, 'commissions.see');
  const ids = await idsOf(db(), collectorId);
  return read(actor, { collectorId: { in: [...ids] } });
}

/** What waits on somebody, the longest waiting first: for the first page of the day. */
export async function listWaiting(actor: Actor): Promise<CommissionWaiting[]> {
  const going = await listCommissions(actor);
  return going
    .filter((each) => each.waitsOn !== 'nobody')
    .sort(longestWaitingFirst)
    .map(({ number, title, collector, sentence, waitsOn, since, picture }) => ({
      ...{ number, title, collector, sentence, waitsOn, since, picture },
      href: `/commissions/${number}`,
      pictureUrl: picture?.src ?? null,
    }));
}

async function read(actor: Actor, where: Prisma.CommissionWhereInput): Promise<CommissionInList[]> {
  const { telling, zone } = await readTelling(actor);
  const rows = await db().commission.findMany({
    where,
    select: listSelect,
    orderBy: { number: 'desc' },
    take: commissionsListed,
  });
  return rows
    .map((row) => {
      const facts = factsOf(row, zone);
      const now = standing(facts, telling.today);
      const presses = pressing(facts, now, telling.today);
      return { presses, number: row.number, told: toldOf(row, { facts, now, presses, telling }) };
    })
    .sort((one, other) => mostOverdueFirst(one.presses, other.presses) || one.number - other.number)
    .map(({ told }) => told);
}

type ListRow = Prisma.CommissionGetPayload<{ select: typeof listSelect }>;
type Read = { facts: CommissionFacts; now: Standing; presses: Pressing; telling: Telling };

function toldOf(row: ListRow, { facts, now, presses, telling }: Read): CommissionInList {
  return {
    number: row.number,
    title: row.title,
    collector: row.collector.name,
    sentence: standingSentence(now, telling),
    waitsOn: now.waitsOn,
    since: now.since,
    where: now.where.key,
    next: nextWords(now.where),
    promisedOn: facts.agreement?.promisedOn ?? null,
    over: overWords(presses, telling),
    waits: waitsWords(presses),
    picture: pictureOf(row),
  };
}

type Waiting = Pick<CommissionInList, 'number' | 'since'>;

function longestWaitingFirst(one: Waiting, other: Waiting): number {
  if (one.since === other.since) return one.number - other.number;
  return one.since < other.since ? -1 : 1;
}

async function idsLike(letters: string): Promise<string[]> {
  const within = `%${letters.replace(/[\\%_]/g, '\\$&')}%`;
  const number = /^\d{1,8}$/.test(letters) ? Number(letters) : null;
  const rows = await db().$queryRaw`
    SELECT commission.id FROM "Commission" commission
    JOIN "Collector" collector ON collector.id = commission."collectorId"
    JOIN "Collector" kept ON kept.id = coalesce(collector."mergedIntoId", collector.id)
    WHERE commission.number = ${number}::int
      OR commission.title ILIKE ${within} OR collector.name ILIKE ${within}
      OR kept.name ILIKE ${within}
      OR word_similarity(${letters}, commission.title) >= ${likenessLeast}
      OR word_similarity(${letters}, collector.name) >= ${likenessLeast}
      OR word_similarity(${letters}, kept.name) >= ${likenessLeast}
    ORDER BY commission.number DESC
    LIMIT ${commissionsListed}`;
  return z
    .array(z.object({ id: z.uuid() }))
    .parse(rows)
    .map((row) => row.id);
}
