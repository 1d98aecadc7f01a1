import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Facts, type Fact } from '@/app/ui/page/facts';
import { Picture } from '@/app/ui/piece/picture';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { dayWord } from '@/lib/commissions/rules/course/sentences';
import { wallWords, exposureWords } from '@/lib/commissions/rules/words';
import type { InDiary } from '@/lib/installation/reads';
import { kindWords } from '@/lib/installation/rules';
import type { JobStanding } from '@/lib/studio/reads/standing';
import { piecesWords } from '@/lib/studio/rules/words';
import { sizeWords } from '../size-words';
import css from '../commissions.module.css';

type SheetHeadProps = Readonly<{
  sheet: Sheet;
  jobs: readonly JobStanding[];
  days: readonly InDiary[];
}>;

/**
 * The top of the sheet: the picture of what was agreed, and beside it whom, where, how much, how
 * far the making is and when it hangs.
 */
export function SheetHead({ sheet, jobs, days }: SheetHeadProps) {
  const { picture } = sheet;
  return (
    <div className={css['head']}>
      <div className={css['head-picture']}>
        {picture ? (
          <Picture {...picture} first />
        ) : (
          <p className={css['no-picture']}>No picture yet: the first sketch will hang here.</p>
        )}
      </div>
      <div className={css['head-facts']}>
        <Facts
          facts={[...placeFacts(sheet), ...moneyFacts(sheet), ...dayFacts(sheet, jobs, days)]}
        />
      </div>
    </div>
  );
}

function placeFacts({ collector, request, gallery }: Sheet): Fact[] {
  const { room, siteAddress, exposure, wall } = request;
  const where = [room, siteAddress ?? collector.address].filter((part) => part !== null);
  const on = [exposure && exposureWords[exposure], wall && wallWords[wall]].filter(
    (part) => part !== null,
  );
  return [
    {
      name: 'For',
      value: (
        <>
          <Link href={`/collectors/${collector.id}`}>{collector.name}</Link>
          {collector.reach ? <span className={css['reach']}>, {collector.reach}</span> : null}
        </>
      ),
    },
    { name: 'Will hang', value: where.length > 0 ? where.join(', ') : null },
    { name: 'On', value: on.length > 0 ? on.join(', ') : null },
    { name: 'Size', value: sizeWords(request, gallery.lengthUnit) },
  ];
}

function moneyFacts({ money, agreement, telling, handOver }: Sheet): Fact[] {
  const agreed = agreement && <DayText day={agreement.agreedOn} />;
  if (!telling.seesMoney) return [{ name: 'Agreed', value: agreed, notKnown: 'not agreed yet' }];
  if (!money) return [{ name: 'Agreed', value: null, notKnown: 'not agreed yet' }];
  const { currency } = telling;
  const tax = handOver ? 'with tax' : 'with tax at today’s rate';
  return [
    {
      name: 'Agreed',
      value: (
        <>
          <Money cents={money.priceCents} currency={currency} />,{' '}
          <Money cents={money.totalCents} currency={currency} /> {tax}
        </>
      ),
    },
    { name: 'Paid', value: <Money cents={money.paidCents} currency={currency} /> },
    {
      name: 'Balance',
      value: <Money cents={money.owedCents} currency={currency} size="strong" />,
    },
  ];
}

function dayFacts(
  { telling }: Sheet,
  jobs: readonly JobStanding[],
  days: readonly InDiary[],
): Fact[] {
  const stands = jobs.flatMap((job) =>
    job.standings.map((each) => `${piecesWords(each.pieces)}: ${each.name}`),
  );
  const next = days.findLast((day) => day.calledOffWhy === null);
  return [
    { name: 'Job', value: stands.join('; ') || null, notKnown: 'no job is open yet' },
    {
      name: 'Day',
      value: next && `${kindWords[next.kind]} ${dayWord(next.startsOn, telling.today)}`,
      notKnown: 'no day is booked yet',
    },
  ];
}
