import type { TilePlace, TileWallAsked } from './asked';
import { jointFloorUm } from './order';

/** A place as a form names it. */
export const placeTitles: Readonly<Record<TilePlace, string>> = {
  heat: 'Near a range or a fireplace',
  water: 'A shower, a pool, or what is often wet',
  outdoors: 'Outdoors',
  food: 'Food or hands lie on it: a counter, a table',
};

const placeCautions: Readonly<Record<TilePlace, string>> = {
  heat: 'Heat: the distance from a flame, and what may stand behind it, are the code’s and the maker’s of the stove. A heavy relief tile over a range is held by a batten or screws while it sets.',
  water:
    'Wet: only a body that takes up little water, on a wall that is sealed behind. Chlorine and a soft glaze do not go together.',
  outdoors:
    'Outdoors: what takes up water is lifted by frost. No plywood and no mastic; a wall that drains, is covered at the top and has joints to move.',
  food: 'Food and counters: only a glaze that was tested for it, and none that is soft or crazed. Relief holds what it is wiped with.',
};

/** What is minded whenever hand-made tile is set. */
export const settingIsTheirs =
  'Setting is a licensed tile contractor’s, and gas, water and power behind the wall are theirs who are licensed for them. Once it is set, it counts as accepted: lay it out dry first.';

/** What is minded of a wall as it is asked; empty where nothing but the setting is. */
export function tileCautions(asked: TileWallAsked): string[] {
  return [
    ...asked.places.map((place) => placeCautions[place]),
    ...(asked.sets.length > 0
      ? [
          'A relief tile that stands out is caught by hands and sleeves: not beside a way, and not over a bed.',
        ]
      : []),
    ...(asked.jointUm < jointFloorUm(asked)
      ? [
          'The joint is narrower than these tiles want: they differ by more than it takes up, and edges will meet.',
        ]
      : []),
  ];
}
