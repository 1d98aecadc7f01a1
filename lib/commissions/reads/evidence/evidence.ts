import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import {
  agreementForCollector,
  changeOrdersForCollector,
} from '@/lib/commissions/reads/agreement/agreements';
import { findHandOverPaper } from '@/lib/commissions/reads/agreement/hand-over-for';
import { readShown } from '@/lib/commissions/reads/colours/shown';
import { listProgress } from '@/lib/commissions/reads/course/progress';
import { readTime, type TimeTold } from '@/lib/commissions/reads/course/time';
import { listRequestPictures } from '@/lib/commissions/reads/papers';
import { fileIdOf } from '@/lib/commissions/reads/picture';
import { listMoneyLines, type MoneyLines } from '@/lib/commissions/reads/payments';
import { listProposals } from '@/lib/commissions/reads/proposal/proposals';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { anEntry, type Chapter, type Entry } from '@/lib/commissions/rules/evidence/chapters';
import { clockWords } from '@/lib/commissions/rules/course/clocks';
import { exposureWords, wallWords } from '@/lib/commissions/rules/words';
import { dayOf, formatDay } from '@/lib/dates/rules';
import { formatCents, type Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { formatSize } from '@/lib/units/rules';
import { readShownMarks } from './marks';
import { progressEntries, shownEntries } from './shown';
import { agreementEntries, handOverEntries, proposalEntries } from './written';

/**
 * Everything that is kept of a commission, in the order one would prove it: what was asked, offered,
 * shown, approved, agreed, changed, told, made, paid, handed over. Every hash is computed anew.
 *
 * What names a price (proposals, agreement, money) is left out for those who see no money.
 */
export async function readEvidence(actor: Actor, sheet: Sheet): Promise<Chapter[]> {
  assertAllowed(actor, 'commissions.see');
  const { id, telling, gallery } = sheet;
  const zone = gallery.timeZone;
  const [shown, marks, progress, time, handed, pictures] = await Promise.all([
    readShown(db(), id),
    readShownMarks(db(), id),
    listProgress(actor, id),
    readTime(actor, id, telling.today),
    findHandOverPaper(actor, id),
    listRequestPictures(actor, id),
  ]);
  const unit = gallery.lengthUnit === 'in' ? 'lb' : 'kg';
  const asked = requestEntry(sheet);
  const requestPictures = pictures.flatMap((picture) => {
    const fileId = fileIdOf(picture);
    return fileId ? [{ ...picture, fileId }] : [];
  });
  return [
    { title: 'What was asked', entries: [{ ...asked, pictures: requestPictures }] },
    ...(telling.seesMoney ? await writtenChapters(actor, id, zone) : []),
    { title: 'Sketches and colours', entries: shownEntries(shown, marks, zone) },
    { title: 'What was said of the day', entries: time ? dayEntries(time) : [] },
    { title: 'The making and the hanging', entries: progressEntries(progress, unit) },
    ...(telling.seesMoney
      ? [{ title: 'Money', entries: moneyEntries(await listMoneyLines(actor, id), sheet) }]
      : []),
    { title: 'The hand-over', entries: handOverEntries(handed, zone) },
  ];
}

async function writtenChapters(actor: Actor, id: string, zone: string): Promise<Chapter[]> {
  const [proposals, agreement, changes] = await Promise.all([
    listProposals(actor, id),
    agreementForCollector(id),
    changeOrdersForCollector(id),
  ]);
  return [
    { title: 'Proposals', entries: proposalEntries(proposals) },
    { title: 'Agreement and changes', entries: agreementEntries(agreement, changes, zone) },
  ];
}

function requestEntry({ request, collector, gallery }: Sheet): Entry {
  const { widthUm, heightUm, depthUm, wish, avoid, colours, exposure, wall } = request;
  const size =
    widthUm !== null && heightUm !== null
      ? formatSize({ widthUm, heightUm, depthUm }, gallery.lengthUnit)
      : null;
  const said: readonly (readonly [string, string | null])[] = [
    ['Taken down by', request.takenBy],
    ['Says yes', request.decides],
    ['Pays', request.pays],
    ['The wall is of', request.wallOwner],
    ['They wish', wish],
    ['They do not want', avoid],
    ['Colours to go with', colours],
    ['Room', request.room],
    ['Where', request.siteAddress],
    ['It will live', exposure && exposureWords[exposure]],
    ['The wall is', wall && wallWords[wall]],
    ['Size', size],
    ['Wished for by', request.wishedOn && formatDay(request.wishedOn, 'long')],
  ];
  return anEntry({
    title: `Asked for by ${collector.name}`,
    on: dayOf(request.askedAt, gallery.timeZone),
    lines: said.map(([name, value]) => `${name}: ${value ? value : 'not known'}`),
  });
}

function dayEntries({ said, lost }: TimeTold): Entry[] {
  const entries = said.map(({ saidOn, dayOn, words }) =>
    anEntry({
      title: dayOn ? formatDay(dayOn, 'long') : 'No day promised',
      on: saidOn,
      lines: [words],
    }),
  );
  const all = lost.map(({ clock, days }) => `${clockWords[clock]} ${days}`).join(', ');
  return all === ''
    ? entries
    : [...entries, anEntry({ title: `Days lost, by whose clock they ran on: ${all}` })];
}

function moneyEntries({ asked, payments, refunds }: MoneyLines, { telling }: Sheet): Entry[] {
  const money = (cents: Cents) => formatCents(cents, telling);
  return [
    ...asked.map(({ name, amountCents, askedOn, dueOn, withdrawnWhy }) =>
      anEntry({
        title: `Asked for: ${money(amountCents)}, ${name}`,
        on: askedOn,
        lines: [
          `Due ${formatDay(dueOn, 'long')}.`,
          ...(withdrawnWhy === null ? [] : [`Taken back: ${withdrawnWhy}`]),
        ],
      }),
    ),
    ...payments.map(({ number, amountCents, paidBy, receivedOn, takenBy }) =>
      anEntry({
        title: `Paid: ${money(amountCents)} by ${paidBy}`,
        on: receivedOn,
        lines: [`Slip ${number}, taken by ${takenBy}.`],
      }),
    ),
    ...refunds.map(({ number, amountCents, why, refundedOn }) =>
      anEntry({
        title: `Given back: ${money(amountCents)}`,
        on: refundedOn,
        lines: [`Paper ${number}: ${why}`],
      }),
    ),
  ].toSorted((one, other) => (one.on ?? '').localeCompare(other.on ?? ''));
}
