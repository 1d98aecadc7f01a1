import type { Doer } from '@/lib/access/rules';
import { addChange, addSignedChange } from '@/lib/commissions/writes/agreement/change';
import { addDays, dateFromDay, instantOf, type Day } from '@/lib/dates/rules';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok } from '@/lib/platform/result';
import { playEnquiry } from '@/seed/commissions/enquiry';
import { drawMaking, playMaking } from '@/seed/commissions/making';
import { playPage } from '@/seed/commissions/page';
import { playProposal } from '@/seed/commissions/proposal';
import { playTaxRule } from '@/seed/commissions/tax-rule';
import { gallery } from '@/seed/scenario/gallery';
import type { SetUp } from '@/seed/set-up';

type Demo = { today: Day; setUp: SetUp };

/** What goes on around the commissions of the demo these days: proposals, changes, twins, pages. */
export async function playWhatGoesOn(demo: Demo): Promise<void> {
  await playEnquiry(demo);
  const { today, setUp } = demo;
  const pictures = await drawMaking();
  const done = await inTransaction(
    async (tx) => {
      await playProposals(tx, demo);
      await playChanges(tx, demo);
      await giveTwin(tx, demo);
      await openPages(tx, demo);
      await playMaking(tx, { today, maker: setUp.maker }, pictures);
      const { taxPlaceId } = setUp;
      await playTaxRule({ tx, owner: on(demo, 200), today, taxPlaceId });
      return ok(true as const);
    },
    { timeoutMs: 60_000 },
  );
  invariant(done.ok, 'The demo is not refused.');
}

function on(demo: Demo, daysAgo: number): Doer {
  const at = instantOf(addDays(demo.today, -daysAgo), '11:40', gallery.timeZone);
  return { actor: demo.setUp.owner, at };
}

async function playProposals(tx: Tx, demo: Demo): Promise<void> {
  const { today, setUp } = demo;
  const common = { tx, today, taxPlaceId: setUp.taxPlaceId };
  await playProposal({
    ...{ ...common, commissionTitle: 'Breakfast room wall', owner: on(demo, 2) },
    understanding: 'The cove at low water, in greys and one green, behind the long table.',
    ...{ widthUm: 1_828_800, heightUm: 914_400, pieces: 52 },
  });
  await playProposal({
    ...{ ...common, commissionTitle: 'Fog over the cannery', owner: on(demo, 1) },
    understanding: 'The old cannery from the water, half gone in the fog.',
    ...{ widthUm: 1_219_200, heightUm: 609_600, pieces: 28 },
    acceptedBy: 'Kenji Aldersey',
  });
}

async function playChanges(tx: Tx, demo: Demo): Promise<void> {
  const more = {
    why: 'They want it to go round the corner.',
    kind: 'work',
    dueEvent: null,
    priceCents: 42_000n,
    promisedAfter: null,
  } as const;
  await change(tx, on(demo, 4), {
    ...{ ...more, title: 'Headland with terns', words: 'Two more terns, at the right edge.' },
    isSigned: true,
  });
  await change(tx, on(demo, 1), {
    ...{ ...more, title: 'Nine herons', words: 'A tenth heron, small, far out.' },
    isSigned: false,
  });
}

type Change = {
  title: string;
  words: string;
  why: string;
  kind: 'work';
  priceCents: bigint;
  dueEvent: null;
  promisedAfter: null;
  isSigned: boolean;
};

async function change(tx: Tx, doer: Doer, { title, isSigned, ...said }: Change): Promise<void> {
  const { id: commissionId, collector } = await tx.commission.findFirstOrThrow({
    where: { title },
    select: { id: true, collector: { select: { name: true } } },
  });
  const offered = await addChange(tx, doer, { ...said, commissionId, askedBy: collector.name });
  invariant(offered.ok, 'The demo is not refused.');
  if (!isSigned) return;
  const { changeOrderId } = offered.value;
  const { contentSha256 } = await tx.changeOrder.findUniqueOrThrow({
    where: { id: changeOrderId },
    select: { contentSha256: true },
  });
  const signed = await addSignedChange(tx, doer, {
    ...{ commissionId, changeOrderId, contentSha256, device: '' },
    signature: {
      ...{ signedName: collector.name, signedCapacity: '', signedAs: 'on_paper' },
      drawing: null,
    },
  });
  invariant(signed.ok, 'The demo is not refused.');
}

/** The twin of one tile is with its collector: only a yes is missing. */
async function giveTwin(tx: Tx, demo: Demo): Promise<void> {
  const tile = await tx.colourTile.findFirst({
    where: { commission: { title: 'Stones for a lobby' } },
    select: { id: true },
    orderBy: { number: 'desc' },
  });
  if (!tile) return;
  const doer = on(demo, 1);
  await tx.colourTileGiven.create({
    data: {
      ...{ tileId: tile.id, how: 'sent by mail', staffId: doer.actor.id, at: doer.at },
      givenOn: dateFromDay(addDays(demo.today, -1)),
    },
    select: { tileId: true },
  });
}

async function openPages(tx: Tx, demo: Demo): Promise<void> {
  const seller = on(demo, 1);
  const open = { tx, seller };
  await playPage({
    ...open,
    commissionTitle: 'Stones for a lobby',
    forName: 'The lobby committee',
  });
  await playPage({
    ...{ ...open, commissionTitle: 'Barnacle door surround', forName: 'Dougal Finnhaven' },
    days: {
      leadId: demo.setUp.maker.id,
      address: '14 Spindrift Lane',
      note: 'Two people, the long level.',
      // The day before, the maker hangs something else.
      fromOn: addDays(demo.today, 13),
    },
  });
}
