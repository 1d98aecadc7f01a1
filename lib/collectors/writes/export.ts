import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dayOf } from '@/lib/dates/rules';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { readGroup } from '../reads/group';
import { readEverythingKept } from '../reads/kept';
import type { EraseRefusal } from '../rules/erase';
import { keptFile } from '../rules/export';

const timeoutMs = 60_000;

/**
 * Hands out everything that is kept of one person, as one file, and writes down that it was done.
 * Each time is an act of its own: nothing is changed by it.
 *
 * @returns the file's text, as `keptFile` writes it; refuses, in this order: not allowed, nobody
 *   with that id, somebody who was struck out
 */
export async function handOutKept(
  doer: Doer,
  collectorId: string,
): Promise<Result<string, EraseRefusal>> {
  const may = allow(doer.actor, 'collectors.erase');
  if (!may.ok) return may;
  return inTransaction<string, EraseRefusal>(
    async (tx) => {
      const group = await readGroup(tx, collectorId);
      if (!group) return refuse({ code: 'unknown_collector' });
      const { name: gallery, timeZone } = await getGallery(tx);
      if (group.erasedAt !== null) {
        return refuse({ code: 'struck_out_already', on: dayOf(group.erasedAt, timeZone) });
      }
      const kept = await readEverythingKept(tx, group.ids);
      await recordAudit(tx, doer, {
        ...{ did: 'handed out everything kept of a collector', subject: 'Collector' },
        ...{ subjectId: group.livingId, facts: {} },
      });
      return ok(keptFile(kept, { gallery, at: doer.at }));
    },
    { timeoutMs },
  );
}
