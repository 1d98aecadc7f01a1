import type { Actor } from '@/lib/access/rules';
import { addDays, instantOf, type Day } from '@/lib/dates/rules';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok } from '@/lib/platform/result';
import type { Technique } from '@/lib/studio/rules';
import { movePieces, openJob } from '@/lib/studio/writes';
import { designOf, type DemoSku } from './catalogue';
import { gallery } from './scenario/gallery';
import { forms, type DesignCode, type FormKey } from './scenario/pieces';
import type { SetUp } from './set-up';

type StockJob = {
  design: DesignCode;
  form: FormKey;
  technique: Technique;
  pieces: number;
  /** How many are to come out good. */
  wanted: number;
  /** How many days ago it was moved to each step that it has reached, oldest first. */
  movedDaysAgo: readonly number[];
  neededInDays: number;
};

/** What the studio has in hand for the shelves; invented. */
const stockJobs: readonly StockJob[] = [
  {
    design: 'TERN',
    form: '10',
    technique: 'press_moulded',
    pieces: 24,
    wanted: 20,
    movedDaysAgo: [24, 22, 20, 9, 6, 3],
    neededInDays: 14,
  },
  {
    design: 'CHANT',
    form: '5',
    technique: 'slip_cast',
    pieces: 40,
    wanted: 34,
    movedDaysAgo: [15, 13, 11],
    neededInDays: 48,
  },
  {
    design: 'KELP',
    form: 'R',
    technique: 'thrown',
    pieces: 12,
    wanted: 10,
    movedDaysAgo: [31, 30, 29],
    neededInDays: 34,
  },
  {
    design: 'FERN',
    form: 'L',
    technique: 'thrown',
    pieces: 8,
    wanted: 7,
    movedDaysAgo: [19, 18, 17, 5],
    neededInDays: 40,
  },
  {
    design: 'OTTER',
    form: '5',
    technique: 'slip_cast',
    pieces: 36,
    wanted: 30,
    movedDaysAgo: [1],
    neededInDays: 78,
  },
  {
    design: 'HERON',
    form: 'P',
    technique: 'press_moulded',
    pieces: 10,
    wanted: 8,
    movedDaysAgo: [],
    neededInDays: 95,
  },
];

/** Opens the studio's own jobs and moves them to where they stand today. */
export async function openStockJobs(demo: {
  today: Day;
  setUp: SetUp;
  skus: readonly DemoSku[];
}): Promise<void> {
  const { today, setUp, skus } = demo;
  for (const { design, form, technique, movedDaysAgo, neededInDays, ...counts } of stockJobs) {
    const sku = skus.find((each) => each.design === design && each.form === form);
    invariant(sku, `${design} is made as ${form}.`);
    const title = `${designOf(design).title}, ${forms[form].width}`;
    const opened = addDays(today, -(movedDaysAgo[0] ?? 1) - 1);
    const done = await inTransaction<true, never>(async (tx) => {
      const doer = { actor: setUp.maker, at: instantOf(opened, '09:00', gallery.timeZone) };
      const neededOn = addDays(today, neededInDays);
      const job = await openJob(tx, doer, {
        ...{ title, technique, ...counts, skuId: sku.id, neededOn },
      });
      invariant(job.ok, 'A job for the shelves is opened.');
      const moves = movedDaysAgo.map((daysAgo) => addDays(today, -daysAgo));
      await walkJob(tx, setUp.maker, { jobId: job.value.id, pieces: counts.pieces, moves });
      return ok(true as const);
    });
    invariant(done.ok, 'The demo is not refused.');
  }
}

/** Moves all pieces of a job one step on, on each of these days. */
export async function walkJob(
  tx: Tx,
  maker: Actor,
  job: { jobId: string; pieces: number; moves: readonly Day[] },
): Promise<void> {
  for (const [fromPosition, on] of job.moves.entries()) {
    const doer = { actor: maker, at: instantOf(on, '15:20', gallery.timeZone) };
    const { jobId, pieces } = job;
    const moved = await movePieces(tx, doer, { jobId, fromPosition, pieces });
    invariant(moved.ok, 'The pieces are moved on.');
  }
}
