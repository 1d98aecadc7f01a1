import { notFound } from 'next/navigation';
import { z } from 'zod';
import type { Actor } from '@/lib/access/rules';
import { dayOf, type Day } from '@/lib/dates/rules';
import { findGlaze, type GlazeShown } from '@/lib/glazes/reads/book';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';

/** The id in the address, as Next hands it on. */
export type GlazeParams = Promise<{ id: string }>;

/** The glaze of the address, and the gallery's day; "not found" for anything else. */
export async function readGlaze(
  actor: Actor,
  params: GlazeParams,
): Promise<{ glaze: GlazeShown; today: Day }> {
  const id = z.uuid().safeParse((await params).id);
  if (!id.success) notFound();
  const { timeZone } = await getGallery();
  const today = dayOf(now(), timeZone);
  const glaze = await findGlaze(actor, id.data, today);
  if (!glaze) notFound();
  return { glaze, today };
}
