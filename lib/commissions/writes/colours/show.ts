import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import type { ShowColourTileInput, ShowSketchInput } from '@/lib/commissions/input/colours/showing';
import {
  colourTileContent,
  sketchContent,
  type SketchAreaContent,
} from '@/lib/commissions/rules/content';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { nextLetter } from '@/lib/commissions/rules/words';
import {
  carryOut,
  findOpen,
  tellHistory,
  type AnyRefusal,
} from '@/lib/commissions/writes/carry-out';
import { sha256Of } from '@/lib/commissions/reads/content';
import { readyPicture, type ReadyPicture } from '@/lib/files/ready';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { reserveBatch } from './batches';
import { keepPicture, keepRange, type RangeToKeep } from './range';

/** A sketch or a colour tile that was shown: its id, what people call it, and what a yes binds to. */
export type Shown = {
  id: string;
  label: string;
  fileSha256: string;
  contentSha256: string;
  commissionNumber: number;
};

/** A sketch to show; its letter is given by the order. */
export type SketchToShow = {
  commissionId: string;
  picture: ReadyPicture;
  note: string;
  scale?: string | undefined;
  areas?: readonly SketchAreaContent[] | undefined;
  shownOn: Day;
};

/**
 * Shows a sketch: A first, then B. Its colour areas are part of it.
 *
 * @returns refuses, in this order: not allowed, a picture that cannot be kept, a key used for
 *   something else, unknown, ended early, handed over, a day to come
 */
export async function showSketch(
  doer: Doer,
  input: ShowSketchInput,
): Promise<Result<Shown, AnyRefusal>> {
  const permission = 'commissions.write';
  const allowed = allow(doer.actor, permission);
  if (!allowed.ok) return allowed;
  const ready = await readyPicture(input.picture);
  if (!ready.ok) return ready;
  const { requestKey, commissionId, note, scale, areas, shownOn } = input;
  const shown = { commissionId, note, scale, areas, shownOn };
  const said = { ...shown, sha256: ready.value.sha256 };
  const command = { name: 'showSketch', permission, key: requestKey, input: said } as const;
  return carryOut(doer, command, (tx) => addSketch(tx, doer, { ...shown, picture: ready.value }));
}

/** The step of {@link showSketch}: joins the caller's transaction, asks nobody for leave. */
export async function addSketch(
  tx: Tx,
  doer: Doer,
  sketch: SketchToShow,
): Promise<Result<Shown, CommissionRefusal>> {
  const found = await findOpen(tx, doer, sketch.commissionId);
  if (!found.ok) return found;
  const { commissionId, note, scale = '', areas = [], shownOn } = sketch;
  if (shownOn > found.value.today) return refuse({ code: 'day_to_come', on: shownOn });
  const letter = nextLetter(found.value.facts.sketches.length);
  const file = await keepPicture(tx, doer, sketch.picture);
  const contentSha256 = sha256Of(sketchContent({ letter, note, scale, areas, ...file }));
  const { id } = await tx.sketch.create({
    data: {
      ...{ commissionId, letter, note, scale, ...file, contentSha256, at: doer.at },
      shownOn: dateFromDay(shownOn),
      areas: { create: areas.map((area, at) => ({ ...area, position: at + 1 })) },
    },
    select: { id: true },
  });
  const facts = { letter, sha256: contentSha256 };
  await tellHistory(tx, doer, { commissionId, did: `showed sketch ${letter}`, facts });
  const { number: commissionNumber } = found.value;
  return ok({ id, label: letter, fileSha256: file.fileSha256, contentSha256, commissionNumber });
}

/** A colour tile to show; its number is given by the order. L*, a*, b* as decimal text. */
export type ColourTileToShow = RangeToKeep & {
  commissionId: string;
  picture: ReadyPicture;
  glazes: string;
  bodyId?: string | null | undefined;
  coats?: number | null | undefined;
  cone?: string | undefined;
  firing?: string | undefined;
  batchId?: string | null | undefined;
  keptAt?: string | undefined;
  areas?: readonly string[] | undefined;
  shownOn: Day;
};

/**
 * Shows a colour tile, 1 first, fired as a range; the bucket of its glaze is kept for the job.
 *
 * @returns refuses as {@link showSketch}, then: no such clay body, no such bucket, a bucket that is
 *   kept for another commission
 */
export async function showColourTile(
  doer: Doer,
  input: ShowColourTileInput,
): Promise<Result<Shown, AnyRefusal>> {
  const permission = 'commissions.write';
  const allowed = allow(doer.actor, permission);
  if (!allowed.ok) return allowed;
  const ready = await readyRange(input);
  if (!ready.ok) return ready;
  const { requestKey, forAreas, ...tileSaid } = input;
  const shown = { ...tileSaid, ...ready.value };
  const areas = (forAreas ?? '')
    .split(',')
    .map((name) => name.trim())
    .filter(Boolean);
  const shas = [ready.value.picture, ready.value.lightPicture, ready.value.darkPicture];
  const words = { ...tileSaid, picture: null, lightPicture: null, darkPicture: null };
  const said = { ...words, areas, shas: shas.map((picture) => picture?.sha256 ?? null) };
  const command = { name: 'showColourTile', permission, key: requestKey, input: said } as const;
  const tile = { ...shown, areas };
  return carryOut(doer, command, (tx) => addColourTile(tx, doer, tile));
}

type ReadyRange = Required<Pick<ColourTileToShow, 'picture' | 'lightPicture' | 'darkPicture'>>;

async function readyRange(
  input: ShowColourTileInput,
): Promise<Result<ReadyRange, CommissionRefusal>> {
  const middle = await readyPicture(input.picture);
  if (!middle.ok) return middle;
  const light = input.lightPicture ? await readyPicture(input.lightPicture) : ok(null);
  if (!light.ok) return light;
  const dark = input.darkPicture ? await readyPicture(input.darkPicture) : ok(null);
  if (!dark.ok) return dark;
  return ok({ picture: middle.value, lightPicture: light.value, darkPicture: dark.value });
}

/** The step of {@link showColourTile}: joins the caller's transaction, asks nobody for leave. */
export async function addColourTile(
  tx: Tx,
  doer: Doer,
  tile: ColourTileToShow,
): Promise<Result<Shown, CommissionRefusal>> {
  const found = await findOpen(tx, doer, tile.commissionId);
  if (!found.ok) return found;
  const { commissionId, shownOn, batchId = null } = tile;
  if (shownOn > found.value.today) return refuse({ code: 'day_to_come', on: shownOn });
  const body = await bodyNameOf(tx, tile.bodyId ?? null);
  if (body === null) return refuse({ code: 'unknown_body' });
  const reserved =
    batchId === null ? ok(true) : await reserveBatch(tx, doer, { batchId, commissionId });
  if (!reserved.ok) return reserved;

  const number = found.value.facts.colourTiles.length + 1;
  const kept = await keepTile(tx, doer, { tile, number, body });
  const facts = { number, glazes: tile.glazes, sha256: kept.contentSha256 };
  await tellHistory(tx, doer, { commissionId, did: `showed colour tile ${number}`, facts });
  return ok({ ...kept, label: String(number), commissionNumber: found.value.number });
}

/** Empty for a body that is not known yet; null when there is none with this id. */
async function bodyNameOf(tx: Tx, id: string | null): Promise<string | null> {
  if (id === null) return '';
  const body = await tx.clayBody.findUnique({ where: { id }, select: { name: true } });
  return body?.name ?? null;
}

async function keepTile(
  tx: Tx,
  doer: Doer,
  { tile, number, body }: { tile: ColourTileToShow; number: number; body: string },
) {
  const { commissionId, glazes, coats = null, cone = '', firing = '', areas = [] } = tile;
  const file = await keepPicture(tx, doer, tile.picture);
  const range = await keepRange(tx, doer, tile, file);
  const shades = range.map(({ fileId: _id, ...shade }) => shade);
  const told = { number, glazes, body, coats, cone, firing, areas, shades };
  const contentSha256 = sha256Of(colourTileContent({ ...told, ...file }));
  const { id } = await tx.colourTile.create({
    data: {
      ...{ commissionId, number, glazes, coats, cone, firing, ...file, contentSha256 },
      ...{ bodyId: tile.bodyId ?? null, batchId: tile.batchId ?? null, keptAt: tile.keptAt ?? '' },
      ...{ shownOn: dateFromDay(tile.shownOn), at: doer.at },
      areas: { create: areas.map((name, at) => ({ name, position: at + 1 })) },
      shades: {
        create: range.map(({ shade, fileId, lab }) => ({
          ...{ shade, fileId },
          ...{ lStar: lab?.[0] ?? null, aStar: lab?.[1] ?? null, bStar: lab?.[2] ?? null },
        })),
      },
    },
    select: { id: true },
  });
  return { id, fileSha256: file.fileSha256, contentSha256 };
}
