import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { listPlacesOn, listStates, type StateKept } from '@/lib/tax/reads';
import {
  countedSpans,
  thresholdStanding,
  type Sent,
  type ThresholdStanding,
} from '@/lib/tax/rules/threshold';

/** A state and the days that are counted, half open. */
export type SentAsked = Readonly<{ state: string; fromOn: Day; untilOn: Day }>;

const sentRow = z.object({ cents: z.bigint(), sales: z.number() });

/**
 * What was sent to or hung in a state over some days: before tax and less what came back, and in
 * how many sales that were not wholly taken back. Money for later is not counted.
 *
 * @returns in the order asked; one statement for all of them
 */
export async function readSentTo(
  asked: readonly SentAsked[],
  from: Prisma.TransactionClient = db(),
): Promise<Sent[]> {
  const states = asked.map(({ state }) => state);
  const firsts = asked.map(({ fromOn }) => fromOn);
  const ends = asked.map(({ untilOn }) => untilOn);
  const found = await from.$queryRaw`
    SELECT coalesce(sum(sale.cents), 0)::bigint AS cents,
      (count(*) FILTER (WHERE sale.cents > 0))::int AS sales
    FROM unnest(${states}::text[], ${firsts}::date[], ${ends}::date[])
      WITH ORDINALITY AS asked(state, "fromOn", "untilOn", place)
    LEFT JOIN LATERAL (
      SELECT sum(line."netCents" - coalesce(back.cents, 0)) AS cents
      FROM "Sale" sold
      JOIN "TaxPlace" taxed ON taxed.id = sold."taxPlaceId" AND taxed.state = asked.state
      JOIN "SaleLine" line ON line."saleId" = sold.id AND line."taxKind" <> 'none'
      LEFT JOIN (SELECT "saleLineId", sum("netCents") AS cents FROM "GoodsReturnLine"
        GROUP BY "saleLineId") back ON back."saleLineId" = line.id
      WHERE sold.delivery IN ('sent', 'installed')
        AND sold."soldOn" >= asked."fromOn" AND sold."soldOn" < asked."untilOn"
      GROUP BY sold.id) sale ON true
    GROUP BY asked.place ORDER BY asked.place`;
  return z.array(sentRow).parse(found);
}

/** Another state with how near what was sent there is to its threshold. */
export type StateWatched = StateKept & {
  standing: ThresholdStanding;
  isRegistered: boolean;
  /** False for a state that has a place with rates, and of which nothing else was written down. */
  isKept: boolean;
};

/** The states other than the gallery's own, by name, each with its count on a day. */
export async function listStatesWatched(actor: Actor, today: Day): Promise<StateWatched[]> {
  assertAllowed(actor, 'tax.see');
  const [kept, places] = await Promise.all([listStates(), listPlacesOn(today)]);
  const home = places.find((place) => place.isHome)?.state ?? '';
  const known = new Set([home, ...kept.map(({ state }) => state)]);
  const others = [...new Set(places.map(({ state }) => state))]
    .filter((state) => !known.has(state))
    .map((state) => ({ ...nothingKept, state, isKept: false }));
  const states = [...kept.map((state) => ({ ...state, isKept: true })), ...others]
    .filter(({ state }) => state !== home)
    .toSorted((a, b) => a.state.localeCompare(b.state, 'en'));

  const spans = states.map(({ window }) => countedSpans(window, today));
  const asked = states.flatMap(({ state }, at) =>
    (spans[at] ?? []).map((span) => ({ ...span, state })),
  );
  const sent = await readSentTo(asked);
  const counted = asked.map((span, at) => ({ ...span, sent: sent[at] ?? { cents: 0n, sales: 0 } }));
  return states.map((each) => ({
    ...each,
    isRegistered: each.isKept ? each.registeredFrom !== null && each.registeredFrom <= today : true,
    standing: thresholdStanding(
      each,
      counted.filter(({ state }) => state === each.state),
    ),
  }));
}

const nothingKept: Omit<StateKept, 'state'> = {
  ...{ registeredFrom: null, lookedUpOn: null, note: '', window: 'this_calendar_year' },
  ...{ thresholdCents: null, thresholdSales: null, needsBoth: false },
};
