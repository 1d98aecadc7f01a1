import type { PieceKind } from '@/lib/catalogue/rules';
import { twoPeopleG } from '@/lib/commissions/rules/enquiry/cautions';
import {
  foodStatement,
  lampCaution,
  mayHoldFood,
  type FoodUse,
} from '@/lib/documents/rules/labels/cautions';

/** What is known of a piece that somebody has to look after. */
export type CareAbout = {
  readonly kind: PieceKind;
  readonly foodUse: FoodUse;
  /** Where it lives; null while it is not known. */
  readonly exposure: 'indoors' | 'under_cover' | 'outdoors' | null;
  /** Set into a wall piece by piece, with grout or mortar. */
  readonly isSetInWall: boolean;
  /** Whole grams; null while it was not weighed. */
  readonly weightG: number | null;
};

/** A part of the care sheet: its heading and its sentences. */
export type CarePart = { readonly heading: string; readonly sentences: readonly string[] };

const onWalls: readonly PieceKind[] = ['relief_tile', 'plaque', 'wall_panel'];

/**
 * How to look after a piece, by what it is and where it lives: cleaning, weather, food, electricity,
 * lifting and taking down, and what to do when it breaks.
 *
 * @source common practice; the words on ware that looks fit for food from 21 CFR 109.16(b)
 */
export function careParts(about: CareAbout): CarePart[] {
  const parts: CarePart[] = [
    { heading: 'Cleaning', sentences: cleaning(about) },
    { heading: 'Food', sentences: food(about) },
    { heading: 'Electricity', sentences: about.kind === 'lamp' ? lamp : [] },
    { heading: 'Weather', sentences: weather(about) },
    { heading: 'Lifting it and taking it down', sentences: lifting(about) },
    { heading: 'If something breaks', sentences: broken(about) },
  ];
  return parts.filter(({ sentences }) => sentences.length > 0);
}

const lamp: readonly string[] = [
  lampCaution,
  'Pull the plug before you dust it or change the bulb, and let the bulb cool.',
  'With a frayed cord, a loose socket or a crack through the base it stays unplugged until a qualified person has seen it.',
];

function cleaning({ kind, isSetInWall, exposure }: CareAbout): string[] {
  if (isSetInWall) {
    return [
      'Wipe it with clear water and a pH-neutral soap, and dry it. No vinegar, no lime remover, no bleach: acid eats glaze and grout.',
      'No scouring powder and no steam: neither glaze nor grout forgives them.',
      'Look along the sealed joints once a year, and have them renewed when they open.',
    ];
  }
  if (kind === 'planter') {
    return [
      'Brush it and rinse it with clear water. White bloom on the outside is salt from the water: wipe it off with a damp cloth.',
      'Keep the hole at the bottom open and stand it on feet, so that the water runs off.',
    ];
  }
  if (kind === 'platter' || kind === 'bowl') {
    return [
      'Wash it by hand in warm water with a soft sponge. Not in the dishwasher, unless its maker says so.',
      'No sudden heat or cold: not from the refrigerator into the oven, no boiling water into a cold piece. Not in the microwave.',
    ];
  }
  const wet =
    exposure === 'outdoors'
      ? 'Rinse it with clear water now and then; no pressure washer.'
      : 'Nothing wet: water draws dirt into clay that is not glazed, and swells a board behind it.';
  return [
    'A soft dry brush, or air. No cloth on the relief: its threads catch, and a high edge chips.',
    wet,
  ];
}

function food({ kind, foodUse }: CareAbout): string[] {
  if (!mayHoldFood(kind)) return [];
  if (foodUse === 'proven') {
    return [
      'Clay, glaze and firing were tested in a laboratory for food.',
      'Once the glaze is crazed or chipped it is for looking at only.',
    ];
  }
  return [
    foodStatement,
    'It is for looking at. Nobody eats or drinks from it, and no food lies on it.',
  ];
}

function weather({ kind, exposure }: CareAbout): string[] {
  if (kind === 'planter') {
    return [
      'Bring it in, or empty it and turn it over, before the first hard frost: wet earth that freezes bursts any pot.',
    ];
  }
  if (exposure === 'outdoors' || exposure === 'under_cover') {
    return [
      'Water that stands behind or in it and freezes can burst it. Keep what drains it open, and look at it before winter and after it.',
      'If pieces become loose or sound hollow, keep people from under it and call.',
    ];
  }
  return exposure === null ? ['It lives indoors, unless its maker says otherwise.'] : [];
}

function lifting({ kind, isSetInWall, weightG }: CareAbout): string[] {
  // A relief that nobody weighed is taken for a heavy one.
  const forTwo = weightG === null ? kind === 'wall_panel' : weightG >= twoPeopleG;
  if (isSetInWall) {
    return [
      'It is part of the wall. Whoever drills or builds near it calls first: it can seldom be taken off whole.',
    ];
  }
  const hands = forTwo
    ? 'At least two people lift it, in shoes that hold and gloves that grip, with the way clear before they begin.'
    : 'Lift it with both hands from below, never by an edge of the relief.';
  if (!onWalls.includes(kind)) return [hands];
  return [
    hands,
    ...(forTwo
      ? [
          'It hangs on fixings made for it. Do not hang it on other ones: ask, or have a licensed person look at the wall.',
          'Taking it down is work for those who hung it, or for people who hang heavy things for a living.',
        ]
      : ['Hang it on the fixing it came with, in a wall that holds several times its weight.']),
    'Once a year, see that it still sits flat and that nothing has moved.',
  ];
}

function broken({ kind }: CareAbout): string[] {
  const keep =
    'Keep every piece of it, the small ones too, wrapped one by one, and do not glue anything.';
  const dust = 'Edges are as sharp as glass: gloves, and a damp cloth for the dust.';
  return kind === 'lamp' ? ['Pull the plug first.', keep, dust] : [keep, dust];
}
