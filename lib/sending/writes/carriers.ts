import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayFromDate } from '@/lib/dates/rules';
import { ok } from '@/lib/platform/result';
import type { CarrierTermsInput } from '@/lib/sending/input/carriers';
import { decideTerms } from '@/lib/sending/rules/carriers';
import { carryOut, type SendingAnswer } from './carry-out';

/**
 * Writes down how a carrier reckons from a day on. What was written before stays, and shipments keep
 * the terms they were sent by.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, and what
 *   {@link decideTerms} refuses
 */
export async function keepCarrierTerms(
  doer: Doer,
  input: CarrierTermsInput,
): Promise<SendingAnswer<{ termsId: string }>> {
  const { name, counts, sides, reportDays, claimDays, cover, holdsFromOn, source } = input;
  const command = { name: 'keepCarrierTerms', input, permission: 'settings.keep' } as const;
  return carryOut<{ termsId: string }>(doer, command, async (tx) => {
    const isBySize = counts === 'size';
    const terms = {
      ...{ name, sides, reportDays, claimDays, source, isFreight: counts === 'freight' },
      divisorIn3: isBySize ? input.divisorIn3 : null,
      overIn3: isBySize ? input.overIn3 : 0,
    };
    const known = await tx.carrierRule.findMany({
      where: { name },
      select: { name: true, holdsFromOn: true },
    });
    const decided = decideTerms(
      { ...terms, holdsFromOn, isBySize },
      known.map((each) => ({ ...each, holdsFromOn: dayFromDate(each.holdsFromOn) })),
    );
    if (!decided.ok) return decided;
    const { id } = await tx.carrierRule.create({
      data: { ...terms, coverCents: cover, holdsFromOn: dateFromDay(holdsFromOn), at: doer.at },
      select: { id: true },
    });
    const facts = { name, holdsFromOn, divisorIn3: terms.divisorIn3, reportDays, claimDays };
    const did = 'wrote down how a carrier reckons';
    await recordAudit(tx, doer, { did, subject: 'CarrierRule', subjectId: id, facts });
    return ok({ termsId: id });
  });
}
