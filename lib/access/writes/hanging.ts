import 'server-only';
import { recordAudit } from '@/lib/audit/writes';
import { ok } from '@/lib/platform/result';
import type { HangingTermsInput } from '../input/hanging';
import type { Doer } from '../rules';
import { keepSetting, type SettingKept } from './keep-setting';

/**
 * Keeps how pieces are hung. A plan that was kept before keeps the safety it was made with.
 *
 * @returns refuses `not_allowed`, then a key used for something else
 */
export async function keepHangingTerms(doer: Doer, input: HangingTermsInput): SettingKept {
  const { requestKey, ...asked } = input;
  return keepSetting(doer, { name: 'keepHangingTerms', requestKey, asked }, async (tx) => {
    const { hangSafety, ...terms } = asked;
    const data = { ...terms, hangSafetyPercent: hangSafety * 100 };
    await tx.gallery.update({ where: { id: 1 }, data, select: { id: true } });
    await recordAudit(tx, doer, {
      ...{ did: 'changed how pieces are hung', subject: 'Gallery', subjectId: '1' },
      facts: asked,
    });
    return ok('hanging');
  });
}
