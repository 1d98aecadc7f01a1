import { tilesMost } from './asked';
import type { SpareRefusal } from './order';

/** Why a wall was not laid out; `at` counts set tiles or openings from 0. */
export type TileRefusal =
  | SpareRefusal
  | { code: 'no_size' }
  | { code: 'joint_wider_than_tile' }
  | { code: 'too_many_tiles'; tiles: number }
  | { code: 'opening_outside'; at: number }
  | { code: 'openings_overlap'; at: number }
  | { code: 'set_outside'; at: number }
  | { code: 'set_on_a_cut'; at: number }
  | { code: 'set_over_an_opening'; at: number }
  | { code: 'sets_overlap'; at: number };

/** Says why a wall was not laid out. */
export function tileRefusalMessage(refusal: TileRefusal): string {
  switch (refusal.code) {
    case 'spare_not_a_percent':
      return 'Write the spare as a percentage from 0 to 100, such as 10.';
    case 'no_size':
      return 'The wall and the tile have to have a size.';
    case 'joint_wider_than_tile':
      return 'The joint is wider than the tile. Look at the two again.';
    case 'too_many_tiles':
      return (
        `That would be ${refusal.tiles.toLocaleString('en-US')} tiles, and at most ` +
        `${tilesMost.toLocaleString('en-US')} are laid out at once. Lay it out wall by wall.`
      );
    case 'opening_outside':
      return `Opening ${refusal.at + 1} reaches beyond the tiled field.`;
    case 'openings_overlap':
      return `Opening ${refusal.at + 1} lies upon another. Write the two as one.`;
    case 'set_outside':
      return `Set tile ${refusal.at + 1} reaches beyond the wall.`;
    case 'set_on_a_cut':
      return `Set tile ${refusal.at + 1} would have to be cut. Move it to whole tiles.`;
    case 'set_over_an_opening':
      return `Set tile ${refusal.at + 1} lies upon an opening.`;
    case 'sets_overlap':
      return `Set tile ${refusal.at + 1} lies upon another.`;
  }
}
