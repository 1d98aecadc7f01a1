import css from '@/app/(rooms)/holds/holds.module.css';
import { DayText } from '@/app/ui/figures/day-text';
import type { Day } from '@/lib/dates/rules';
import type { ApprovalShown } from '@/lib/holds/reads/approval-slips';
import { daysLate } from '@/lib/holds/rules/still-here';

/** When it is due back, and by how much that has passed. */
export function Due({ approval, todayOn }: Readonly<{ approval: ApprovalShown; todayOn: Day }>) {
  const { dueOn, endedAt, backs } = approval;
  if (endedAt) {
    const bought = backs.some((back) => back.bought);
    return <span className={css['quiet']}>{bought ? 'bought' : 'came back'}</span>;
  }
  const late = daysLate(dueOn, todayOn);
  return (
    <span className={late > 0 ? css['late'] : dueOn === todayOn ? css['due'] : ''}>
      {late > 0 ? 'was due back ' : 'due back '}
      <DayText day={dueOn} />
      {late > 0 ? `, ${late === 1 ? 'a day' : `${late} days`} ago: call them` : null}
    </span>
  );
}
