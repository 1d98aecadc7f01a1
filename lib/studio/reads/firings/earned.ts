import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { finishedPosition } from '@/lib/studio/rules';
import { roomOf } from '@/lib/studio/rules/kilns/energy';
import { earnedByTurn, type TurnTaken, type TurnsEarned } from '@/lib/studio/rules/kilns/turns';

/** What the turns of the kilns earned that went into one piece of work. */
export type WorkEarned = TurnsEarned & {
  key: string;
  words: string;
  /** Pieces that came out finished. */
  finished: number;
  earnedCents: bigint;
};

const jobColumns = {
  ...{ id: true, title: true, wanted: true, pieces: true },
  steps: { select: { name: true } },
  moves: { select: { fromPosition: true, toPosition: true, pieces: true } },
  sku: { select: { code: true, priceCents: true, design: { select: { title: true } } } },
  commission: {
    select: {
      ...{ id: true, number: true, title: true },
      jobs: { select: { id: true } },
      agreements: { select: { priceCents: true }, orderBy: { version: 'desc' }, take: 1 },
    },
  },
  firingLines: {
    where: { firing: { opened: { isNot: null } } },
    select: {
      ...{ pieces: true, widthUm: true, depthUm: true, heightUm: true },
      firing: {
        select: {
          lines: { select: { pieces: true, widthUm: true, depthUm: true, heightUm: true } },
        },
      },
    },
  },
} as const satisfies Prisma.JobSelect;

type JobRow = Prisma.JobGetPayload<{ select: typeof jobColumns }>;

/** The most jobs that are looked at; the latest count. */
const jobsMost = 400;

/**
 * What a turn earned, by commission and by piece of the stock list: of jobs that are finished, the
 * agreed price or the price of the list, over the turns that their pieces took. A turn is shared out
 * over its load by the room that each piece takes up.
 *
 * @returns the best first
 */
export async function listEarnedByTurns(actor: Actor): Promise<WorkEarned[]> {
  assertAllowed(actor, 'stock.value');
  const jobs = await db().job.findMany({
    where: { firingLines: { some: { firing: { opened: { isNot: null } } } } },
    select: jobColumns,
    orderBy: { number: 'desc' },
    take: jobsMost,
  });
  const done = jobs.filter((job) => finishedOf(job) >= job.wanted);
  const works = new Map<string, JobRow[]>();
  for (const job of done) {
    const key = keyOf(job);
    if (key !== null) works.set(key, [...(works.get(key) ?? []), job]);
  }
  return [...works]
    .flatMap(([key, group]) => workEarned(key, group) ?? [])
    .toSorted((one, other) => Number(other.centsPerTurn - one.centsPerTurn));
}

function finishedOf(job: JobRow): number {
  const last = finishedPosition(job);
  return job.moves.reduce((sum, move) => {
    if (move.toPosition === last) return sum + move.pieces;
    return move.fromPosition === last ? sum - move.pieces : sum;
  }, 0);
}

function keyOf({ commission, sku }: JobRow): string | null {
  return commission?.id ?? sku?.code ?? null;
}

function workEarned(key: string, jobs: readonly JobRow[]): WorkEarned | null {
  const [first] = jobs;
  const whose = first && whoseIs(first);
  // A commission has earned its price once all of its jobs are through.
  if (!whose || whose.jobs > jobs.length) return null;
  const finished = jobs.reduce((sum, job) => sum + finishedOf(job), 0);
  const earnedCents = whose.priceCents * (whose.isByPiece ? BigInt(finished) : 1n);
  const earned = earnedByTurn(earnedCents, jobs.flatMap(turnsOf));
  if (!earned.ok) return null;
  return { ...earned.value, key, words: whose.words, finished, earnedCents };
}

function whoseIs({ commission, sku }: JobRow) {
  if (commission) {
    const { title, number, jobs, agreements } = commission;
    const words = `${title}, commission ${number}`;
    const priceCents = agreements[0]?.priceCents ?? 0n;
    return { words, priceCents, isByPiece: false, jobs: jobs.length };
  }
  if (!sku) return null;
  const words = `${sku.design.title}, ${sku.code}`;
  return { words, priceCents: sku.priceCents, isByPiece: true, jobs: 0 };
}

function turnsOf(job: JobRow): TurnTaken[] {
  return job.firingLines.map((line) => ({
    used: roomOf(line),
    holds: line.firing.lines.reduce((sum, each) => sum + roomOf(each), 0n),
  }));
}
