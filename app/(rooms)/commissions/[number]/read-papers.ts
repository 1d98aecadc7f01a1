import type { Actor } from '@/lib/access/rules';
import {
  agreementForCollector,
  changeOrdersForCollector,
} from '@/lib/commissions/reads/agreement/agreements';
import { findTaxLooked } from '@/lib/commissions/reads/agreement/tax-rules';
import { listShownWhole } from '@/lib/commissions/reads/colours/studio';
import { listProgress } from '@/lib/commissions/reads/course/progress';
import { readTime } from '@/lib/commissions/reads/course/time';
import { listAnswers, listLinks, listMails } from '@/lib/commissions/reads/page/links';
import { listHistory, listRequestPictures } from '@/lib/commissions/reads/papers';
import { listMoneyLines } from '@/lib/commissions/reads/payments';
import { listProposals, readBuildUp } from '@/lib/commissions/reads/proposal/proposals';
import { isAllowed } from '@/lib/access/rules';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { listAppointmentsOf } from '@/lib/installation/reads';
import { now } from '@/lib/platform/clock';
import { listJobsOfCommission } from '@/lib/studio/reads';

/** Everything that hangs below the head of a sheet, for whoever may see it. */
export async function readPapers(actor: Actor, sheet: Sheet) {
  const { id, telling, gallery } = sheet;
  const [shown, pictures, jobs, days, history, links, answers, progress, time] = await Promise.all([
    listShownWhole(actor, id),
    listRequestPictures(actor, id),
    listJobsOfCommission(actor, id, telling.today),
    listAppointmentsOf(actor, id, gallery.timeZone),
    listHistory(actor, id, telling),
    listLinks(actor, id, now()),
    listAnswers(actor, id),
    listProgress(actor, id),
    readTime(actor, id, telling.today),
  ]);
  return { shown, pictures, jobs, days, history, links, answers, progress, time };
}

/** What names money, for those who see it; null for the others. */
export async function readMoneyPapers(actor: Actor, sheet: Sheet) {
  if (!sheet.telling.seesMoney) return null;
  const { id } = sheet;
  const [lines, proposals, agreement, changes, mails, tax] = await Promise.all([
    listMoneyLines(actor, id),
    listProposals(actor, id),
    agreementForCollector(id),
    changeOrdersForCollector(id),
    listMails(actor, id),
    findTaxLooked(actor, id),
  ]);
  const newest = proposals[0];
  const mayLookInside = isAllowed(actor.roles, 'commissions.propose');
  const kept = newest && mayLookInside ? await readBuildUp(actor, newest.id) : null;
  return { lines, proposals, agreement, changes, mails, tax, kept };
}
