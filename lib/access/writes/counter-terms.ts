import 'server-only';
import { recordAudit } from '@/lib/audit/writes';
import { ok } from '@/lib/platform/result';
import type { CounterTermsInput } from '../input/counter-terms';
import type { Doer } from '../rules';
import { keepSetting, type SettingKept } from './keep-setting';

/**
 * Keeps what holds at the counter: discounts, returns, holds, layaways, approval, the drawer.
 * Papers that were written before keep the terms they were written with.
 *
 * @returns refuses `not_allowed`, then a key used for something else
 */
export async function keepCounterTerms(doer: Doer, input: CounterTermsInput): SettingKept {
  const { requestKey, ...asked } = input;
  return keepSetting(doer, { name: 'keepCounterTerms', requestKey, asked }, async (tx) => {
    await tx.gallery.update({ where: { id: 1 }, data: asked, select: { id: true } });
    await recordAudit(tx, doer, {
      ...{ did: 'changed what holds at the counter', subject: 'Gallery', subjectId: '1' },
      facts: asked,
    });
    return ok('the counter');
  });
}
