import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { invariant } from '@/lib/platform/invariant';
import type { TaxPart } from './rules';
import type { DatedRate } from './rules/dated';
import type { Threshold, ThresholdWindow } from './rules/threshold';
import type { TaxSetting } from './rules/treatment';
import type { DatedTreatment } from './rules/treatment-days';

const ratesMost = 500;
/** The most tax places that a list shows. */
const placesMost = 200;

/** Every rate that a place has had, has or will have: by authority, the latest first. */
export async function listRates(placeId: string): Promise<DatedRate[]> {
  const rows = await db().taxRate.findMany({
    where: { placeId },
    orderBy: [{ authority: 'asc' }, { fromOn: 'desc' }],
    take: ratesMost,
  });
  return rows.map(({ id, authority, ratePercent, fromOn, untilOn }) => ({
    id,
    authority,
    ratePercent: ratePercent.toString(),
    fromOn: dayFromDate(fromOn),
    untilOn: untilOn ? dayFromDate(untilOn) : null,
  }));
}

/** A place that has its own rates, as a list shows it. */
export type TaxPlaceListed = { id: string; name: string; state: string };

/** The places that the gallery sells at or sends to, by state and name; at most two hundred. */
export async function listTaxPlaces(): Promise<TaxPlaceListed[]> {
  return db().taxPlace.findMany({
    select: { id: true, name: true, state: true },
    orderBy: [{ state: 'asc' }, { name: 'asc' }],
    take: placesMost,
  });
}

/** A place with what is charged there on a day. */
export type TaxPlaceOn = TaxPlaceListed & {
  isHome: boolean;
  isRegistered: boolean;
  parts: TaxPart[];
};

const placeOnRow = z.object({
  ...{ id: z.string(), name: z.string(), state: z.string() },
  ...{ isHome: z.boolean(), isRegistered: z.boolean() },
  parts: z.array(z.object({ name: z.string(), ratePercent: z.string() })),
});

/** Every place with its rates on a day: the gallery's own first; at most two hundred. */
export async function listPlacesOn(on: Day): Promise<TaxPlaceOn[]> {
  const found = await db().$queryRaw`
    SELECT place.id, place.name, place.state, place.id = home.id AS "isHome",
      (place.state = home.state
       OR coalesce((SELECT coalesce(kept."registeredFrom" <= ${on}::date, false)
         FROM "TaxState" kept WHERE kept.state = place.state), true)) AS "isRegistered",
      coalesce((SELECT json_agg(json_build_object(
          'name', rate.authority, 'ratePercent', trim_scale(rate."ratePercent")::text)
          ORDER BY rate.authority)
        FROM "TaxRate" rate WHERE rate."placeId" = place.id AND rate."fromOn" <= ${on}::date
          AND (rate."untilOn" IS NULL OR ${on}::date < rate."untilOn")), '[]') AS parts
    FROM "TaxPlace" place, "Gallery" gallery JOIN "TaxPlace" home ON home.id = gallery."taxPlaceId"
    WHERE gallery.id = 1
    ORDER BY place.id <> home.id, place.state <> home.state, place.state, place.name
    LIMIT ${placesMost}`;
  return z.array(placeOnRow).parse(found);
}

/** A place that has its own rates; null when there is none with this id. */
export async function findTaxPlace(id: string): Promise<TaxPlaceListed | null> {
  if (!z.uuid().safeParse(id).success) return null;
  return db().taxPlace.findUnique({
    where: { id },
    select: { id: true, name: true, state: true },
  });
}

/** What a state says and said about each kind of line: by kind, the latest first. */
export async function listTreatments(
  state: string,
  from: Prisma.TransactionClient = db(),
): Promise<DatedTreatment[]> {
  const rows = await from.taxTreatment.findMany({
    where: { state },
    select: { id: true, kind: true, treatment: true, shareBy: true, fromOn: true, untilOn: true },
    orderBy: [{ kind: 'asc' }, { fromOn: 'desc' }],
    take: ratesMost,
  });
  return rows.flatMap(({ kind, fromOn, untilOn, ...row }) =>
    kind === 'none'
      ? []
      : [{ ...row, kind, fromOn: dayFromDate(fromOn), untilOn: untilOn && dayFromDate(untilOn) }],
  );
}

/** A state that pieces are sent to: since when we collect there, and from how much we must. */
export type StateKept = Threshold & {
  state: string;
  registeredFrom: Day | null;
  window: ThresholdWindow;
  /** When the owner last looked it up. */
  lookedUpOn: Day | null;
  note: string;
};

/** The states of which something is kept, by name; the gallery's own is not among them. */
export async function listStates(from: Prisma.TransactionClient = db()): Promise<StateKept[]> {
  const rows = await from.taxState.findMany({ orderBy: { state: 'asc' }, take: placesMost });
  return rows.map(({ registeredFrom, lookedUpOn, ...row }) => ({
    ...row,
    registeredFrom: registeredFrom && dayFromDate(registeredFrom),
    lookedUpOn: lookedUpOn && dayFromDate(lookedUpOn),
  }));
}

const settingRow = z.object({
  place: z.string(),
  state: z.string(),
  isRegistered: z.boolean(),
  parts: z.array(z.object({ name: z.string(), ratePercent: z.string() })),
  treatments: z.array(
    z.object({
      kind: z.enum(['goods', 'shipping', 'installation', 'design_work']),
      treatment: z.enum(['taxed', 'not_taxed', 'not_taxed_when_separate']),
      shareBy: z.enum(['by_price', 'by_weight', 'all_taxed']).nullable(),
    }),
  ),
});

/**
 * Everything that decides about the tax of a sale at a place on a day, in one statement.
 *
 * The gallery is registered in its own state, in a state of which nothing else is kept, and in
 * another from the day on which the owner says so. Where it is not, `parts` may well be empty.
 *
 * @throws Error when there is no such place
 */
export async function readTaxSetting(
  from: Prisma.TransactionClient,
  { taxPlaceId, on }: { taxPlaceId: string; on: Day },
): Promise<TaxSetting> {
  const found = await from.$queryRaw`
    SELECT place.name AS place, place.state,
      (place.state = (SELECT home.state FROM "Gallery" gallery
         JOIN "TaxPlace" home ON home.id = gallery."taxPlaceId" WHERE gallery.id = 1)
       OR coalesce((SELECT coalesce(kept."registeredFrom" <= ${on}::date, false)
         FROM "TaxState" kept WHERE kept.state = place.state), true)) AS "isRegistered",
      coalesce((SELECT json_agg(json_build_object(
          'name', rate.authority, 'ratePercent', trim_scale(rate."ratePercent")::text)
          ORDER BY rate.authority, rate."fromOn")
        FROM "TaxRate" rate WHERE rate."placeId" = place.id AND rate."fromOn" <= ${on}::date
          AND (rate."untilOn" IS NULL OR ${on}::date < rate."untilOn")), '[]') AS parts,
      coalesce((SELECT json_agg(json_build_object(
          'kind', kept.kind, 'treatment', kept.treatment, 'shareBy', kept."shareBy")
          ORDER BY kept.kind)
        FROM "TaxTreatment" kept WHERE kept.state = place.state AND kept.kind <> 'none'
          AND kept."fromOn" <= ${on}::date
          AND (kept."untilOn" IS NULL OR ${on}::date < kept."untilOn")), '[]') AS treatments
    FROM "TaxPlace" place WHERE place.id = ${taxPlaceId}::uuid`;
  const [setting] = z.array(settingRow).parse(found);
  invariant(setting, 'The place whose tax is charged exists.');
  return setting;
}
