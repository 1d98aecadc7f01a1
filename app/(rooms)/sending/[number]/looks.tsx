import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Section } from '@/app/ui/page/section';
import { formatDay, type Day } from '@/lib/dates/rules';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import { claimStageWords } from '@/lib/sending/rules/claims';
import { whenWords } from '@/lib/sending/rules/condition';
import { leftWords } from '@/lib/sending/rules/limits';
import { claimLimit } from '../claim-limit';
import css from '../sending.module.css';

type LooksProps = Readonly<{ shipment: ShipmentTold; today: Day }>;

/** How it looked as it left and as it came, and what is claimed. */
export function Looks({ shipment, today }: LooksProps) {
  const { number, reports, claims, stage } = shipment;
  const here = `/sending/${number}`;
  const hasLeft = ['on_the_way', 'arrived', 'fetched'].includes(stage);
  return (
    <Section
      title="How it looked"
      lead="With pictures, before it leaves and as it came: claims fail for want of them."
      act={
        <span className={css['acts']}>
          <ButtonLink href={`${here}/condition/new`} variant="quiet">
            Write how it looks
          </ButtonLink>
          {hasLeft ? (
            <ButtonLink href={`${here}/claim/new`} variant="danger">
              Something is broken
            </ButtonLink>
          ) : null}
        </span>
      }
    >
      {reports.length === 0 ? <p>Nobody wrote it down yet.</p> : null}
      <ul className={css['events']}>
        {reports.map((report) => (
          <li key={report.id}>
            <Link href={`${here}/condition/${report.id}`}>
              {whenWords[report.when]}, <DayText day={report.on} />
            </Link>
            , {report.by}: {report.words}
            <span className={css['quiet']}>
              {picturesWords(report.views.length)}
              {marksWords(report.views.reduce((sum, { marks }) => sum + marks.length, 0))}
            </span>
          </li>
        ))}
        {claims.map((claim) => {
          const limit = claimLimit(claim, today);
          return (
            <li key={claim.id}>
              <Link href={`${here}/claim/${claim.number}`}>Claim {claim.number}</Link>,{' '}
              <Money cents={claim.askedCents} />: {claimStageWords[claim.stage]}
              {limit ? ` by ${formatDay(limit.byOn, 'short')}, ${leftWords(limit)}` : ''}
            </li>
          );
        })}
      </ul>
    </Section>
  );
}

function picturesWords(count: number): string {
  if (count === 0) return 'no picture';
  return count === 1 ? 'one picture' : `${count} pictures`;
}

function marksWords(count: number): string {
  if (count === 0) return '';
  return count === 1 ? ', one mark' : `, ${count} marks`;
}
