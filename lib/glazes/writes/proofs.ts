import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { judgeLeachTest } from '@/lib/clay/rules/leach';
import { dateFromDay } from '@/lib/dates/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { WriteProofInput } from '../input';
import type { GlazeRefusal } from '../rules';
import { inTheBook, keepChosen, tellOfGlaze, todayOf } from './once';

/** A leach test that was written down, and whether both metals keep their limits. */
export type ProofWritten = { glazeId: string; isWithin: boolean };

/**
 * Writes a laboratory's leach test of a recipe down; never changed after.
 *
 * `<0.02` is kept as 0.02: no less is proven.
 *
 * @returns refuses, in this order: not allowed, a picture that cannot be kept, a key used for
 *   something else, a recipe that is not this glaze's, then as the leach rules do: a day still to
 *   come, fewer than six pieces
 */
export async function writeProof(
  doer: Doer,
  { requestKey: key, picture, ...input }: WriteProofInput,
): Promise<Result<ProofWritten, GlazeRefusal>> {
  const command = { name: 'writeProof', key, input, pictures: { picture } };
  return inTheBook(doer, command, async (tx, pictures) => {
    const { glazeId, recipeId, testedOn, laboratory, reportNumber, ware, lead, cadmium } = input;
    const recipe = await tx.glazeRecipe.findFirst({
      where: { id: recipeId, glazeId },
      select: { version: true, glaze: { select: { name: true } } },
    });
    if (!recipe) return refuse({ code: 'unknown_recipe' });
    const readings = lead.map((found, at) => ({ lead: found, cadmium: cadmium[at] ?? '' }));
    const test = { laboratory, testedOn, ware, readings };
    const judged = judgeLeachTest(test, await todayOf(tx, doer));
    if (!judged.ok) return refuse({ code: 'test_not_taken', test: judged.refusal });
    const isWithin = judged.value.holds;
    const fileId = (await keepChosen(tx, doer, pictures.picture)) ?? null;
    await tx.glazeProof.create({
      data: {
        ...{ glazeId, recipeId, laboratory, reportNumber, ware, isWithin, fileId },
        ...{ leadMgPerL: lead.map(plain), cadmiumMgPerL: cadmium.map(plain) },
        ...{ testedOn: dateFromDay(testedOn), staffId: doer.actor.id, at: doer.at },
      },
      select: { id: true },
    });
    const facts = {
      ...{ name: recipe.glaze.name, version: recipe.version, laboratory, reportNumber },
      ...{ ware, isWithin, lead, cadmium },
    };
    await tellOfGlaze(tx, doer, { did: 'wrote a leach test down', glazeId, facts });
    return ok({ glazeId, isWithin });
  });
}

function plain(reading: string): string {
  return reading.replace(/^<\s*/, '');
}
