import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import type { LeachTest, WareKind } from '@/lib/clay/rules/leach';
import type { Lab } from '@/lib/colour/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { foodWord, type FoodWord } from '../rules/food';
import type { RecipeMaterial } from '../rules/recipe';
import { labOf, pictureColumns, pictureOf, type KeptPicture } from './shown';

/** A leach test as it was reported, and what came of it. */
export type ProofShown = LeachTest & {
  id: string;
  reportNumber: string;
  isWithin: boolean;
  picture: KeptPicture | null;
};

/** A version of a recipe, with its own tests. */
export type RecipeShown = {
  id: string;
  version: number;
  note: string;
  writtenOn: Date;
  materials: readonly RecipeMaterial[];
  proofs: readonly ProofShown[];
  food: FoodWord;
};

/** A glaze of the book. */
export type GlazeShown = {
  id: string;
  name: string;
  cone: string;
  coats: number;
  note: string;
  raw: KeptPicture | null;
  fired: KeptPicture | null;
  lab: Lab | null;
  endedOn: Day | null;
  /** The newest version first. */
  recipes: readonly RecipeShown[];
  /** Of the newest recipe. */
  food: FoodWord;
  tiles: number;
};

const glazeColumns = {
  ...{ id: true, name: true, cone: true, coats: true, note: true, endedOn: true },
  ...{ lStar: true, aStar: true, bStar: true },
  rawFile: pictureColumns,
  firedFile: pictureColumns,
  recipes: {
    select: {
      ...{ id: true, version: true, note: true, at: true },
      materials: {
        select: { material: true, percent: true, isAddition: true },
        orderBy: { position: 'asc' },
      },
      proofs: {
        select: {
          ...{ id: true, testedOn: true, laboratory: true, reportNumber: true, ware: true },
          ...{ leadMgPerL: true, cadmiumMgPerL: true, isWithin: true, file: pictureColumns },
        },
        orderBy: [{ testedOn: 'desc' }, { at: 'desc' }],
      },
    },
    orderBy: { version: 'desc' },
  },
  _count: { select: { tiles: true } },
} as const satisfies Prisma.GlazeSelect;

type GlazeRow = Prisma.GlazeGetPayload<{ select: typeof glazeColumns }>;
type RecipeRow = GlazeRow['recipes'][number];

/** The most glazes that the book shows. */
export const glazesListed = 300;

/** The glazes of the book by name, those that are still mixed first. */
export async function listGlazes(actor: Actor, today: Day): Promise<GlazeShown[]> {
  assertAllowed(actor, 'studio.see');
  const rows = await db().glaze.findMany({
    select: glazeColumns,
    orderBy: [{ endedOn: { sort: 'asc', nulls: 'first' } }, { name: 'asc' }],
    take: glazesListed,
  });
  return rows.map((row) => glazeOf(row, today));
}

/** One glaze with all versions of its recipe; null when there is none. */
export async function findGlaze(actor: Actor, id: string, today: Day): Promise<GlazeShown | null> {
  assertAllowed(actor, 'studio.see');
  const row = await db().glaze.findUnique({ where: { id }, select: glazeColumns });
  return row && glazeOf(row, today);
}

function glazeOf(row: GlazeRow, today: Day): GlazeShown {
  const recipes = row.recipes.map((recipe) => recipeOf(recipe, today));
  const { id, name, cone, coats, note, endedOn } = row;
  return {
    ...{ id, name, cone, coats, note, recipes },
    raw: pictureOf(row.rawFile),
    fired: pictureOf(row.firedFile),
    lab: labOf(row),
    endedOn: endedOn && dayFromDate(endedOn),
    food: recipes[0]?.food ?? foodWord([], today),
    tiles: row._count.tiles,
  };
}

function recipeOf({ at, materials, proofs, ...recipe }: RecipeRow, today: Day): RecipeShown {
  const tests = proofs.map(proofOf);
  return {
    ...recipe,
    writtenOn: at,
    materials: materials.map(({ percent, ...each }) => ({ ...each, percent: percent.toString() })),
    proofs: tests,
    food: foodWord(tests, today),
  };
}

function proofOf(row: RecipeRow['proofs'][number]): ProofShown {
  const { id, laboratory, reportNumber, isWithin } = row;
  const ware: WareKind = row.ware;
  return {
    ...{ id, laboratory, reportNumber, isWithin, ware },
    testedOn: dayFromDate(row.testedOn),
    readings: row.leadMgPerL.map((lead, at) => ({
      lead: lead.toString(),
      cadmium: row.cadmiumMgPerL[at]?.toString() ?? '0',
    })),
    picture: pictureOf(row.file),
  };
}
