import { cache } from 'react';
import type { Actor } from '@/lib/access/rules';
import { findTileWall, type TileWallShown } from '@/lib/installation/reads/tiles/walls';

/** The number in the address, as Next hands it on. */
export type WallParams = Promise<{ number: string }>;

const findOnce = cache(findTileWall);

/** The wall of the number in the address; null for anything else. */
export async function readWallOf(actor: Actor, params: WallParams): Promise<TileWallShown | null> {
  const { number } = await params;
  return /^[1-9]\d{0,8}$/.test(number) ? findOnce(actor, Number(number)) : null;
}
