import { z } from 'zod';
import { taxWays } from '@/lib/commissions/rules/agreement/tax';
import { dayInput } from '@/lib/dates/input';
import { stateInput } from '@/lib/tax/input';

/** The form by which the owner keeps what a state says about a commission, from a day on. */
export const keepTaxRuleInput = z
  .strictObject({
    requestKey: z.uuid(),
    state: stateInput,
    taxAs: z.enum(taxWays, { error: 'Say what this is about.' }),
    treatment: z.enum(['taxed', 'not_taxed', 'not_taxed_when_separate'], {
      error: 'Say whether it is taxed.',
    }),
    /** Ticked: the gallery owes tax on what the materials cost. */
    owesOnMaterials: z
      .enum(['yes', 'no'])
      .prefault('no')
      .transform((said) => said === 'yes'),
    note: z.string().trim().max(500, 'Keep the note to 500 letters.').prefault(''),
    fromOn: dayInput,
  })
  .refine(({ treatment, owesOnMaterials }) => treatment !== 'taxed' || !owesOnMaterials, {
    path: ['owesOnMaterials'],
    message: 'Taxed as a sale and again by its materials: say one of the two. An adviser decides.',
  });

/** What keeping a rule takes. */
export type KeepTaxRuleInput = z.output<typeof keepTaxRuleInput>;
