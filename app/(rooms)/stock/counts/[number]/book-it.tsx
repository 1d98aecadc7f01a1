import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { CountSheet } from '@/lib/stock/reads/moves/counts';
import type { DifferenceSeen } from '@/lib/stock/reads/moves/differences';
import { differenceWhys } from '@/lib/stock/rules/moves/count';
import { book, leave } from '../actions';
import css from './count.module.css';

/** The most differences that each get a field of their own; the rest share one reason. */
const eachMost = 120;

const whys = differenceWhys.map(({ why, words }) => ({ value: why, label: words }));

/** What differs from the books at this moment, a reason for each, and the booking of it all. */
export function BookIt({ count }: Readonly<{ count: CountSheet }>) {
  const { differences } = count;
  if (count.lines.length === 0) {
    return <p className={css['quiet']}>What differs is shown here once something is counted.</p>;
  }
  return (
    <FormFrame action={book} label="Book the count">
      <h2>{headOf(differences.length)}</h2>
      <RequestKey />
      <input type="hidden" name="countId" value={count.id} />
      <input type="hidden" name="shownSha256" value={count.shownSha256} />
      {differences.length > 0 ? (
        <ul className={css['lines']}>
          {differences.slice(0, eachMost).map((each) => (
            <Difference key={each.skuId} each={each} />
          ))}
        </ul>
      ) : null}
      {differences.length > 1 ? (
        <Field
          name="whyForAll"
          label={differences.length > eachMost ? moreWords(differences.length) : 'For all others'}
          kind="select"
          size="counter"
          options={[{ value: '', label: 'Say it for each' }, ...whys]}
        />
      ) : null}
      <SubmitButton size="counter" wide pendingText="Booking it…">
        {differences.length === 0 ? 'Everything agrees: book it' : 'Put the books right'}
      </SubmitButton>
    </FormFrame>
  );
}

function headOf(differences: number): string {
  if (differences === 0) return 'Nothing differs';
  const many = differences.toLocaleString('en-US');
  return differences === 1 ? 'One thing differs' : `${many} things differ`;
}

function moreWords(differences: number): string {
  return `For the ${(differences - eachMost).toLocaleString('en-US')} more, and all others`;
}

function Difference({ each }: Readonly<{ each: DifferenceSeen }>) {
  const { skuId, sku, title, expected, counted, difference, numbers, sinceBegun } = each;
  const fits = whys.filter(({ value }) => {
    if (difference === 0) return value === 'counted';
    return difference > 0 ? value === 'found' || value === 'counted' : value !== 'found';
  });
  return (
    <li className={css['difference']}>
      <span className={css['title']}>{title}</span>
      <span>
        {expected} in the books, {counted} counted
        {numbers === null ? '' : `: number ${numbers.seen.join(', ') || 'none'}`}
      </span>
      <span className={css['quiet']}>{sku}</span>
      {sinceBegun === 0 ? null : (
        <span className={css['minded']}>
          {sinceBegun > 0 ? `${sinceBegun} came` : `${-sinceBegun} went`} since the count began.
          Look once more how many are there now.
        </span>
      )}
      <Field
        name={`why.${skuId}`}
        label={`Why ${title} differs`}
        labelHeardOnly
        kind="select"
        size="counter"
        options={[{ value: '', label: 'Why' }, ...fits]}
      />
    </li>
  );
}

/** Leaves the count as it is; nothing of it is booked. */
export function LeaveIt({ countId }: Readonly<{ countId: string }>) {
  return (
    <details>
      <summary>Leave this count</summary>
      <FormFrame action={leave} label="Leave this count">
        <p>Nothing of it is booked. What was scanned stays to be read.</p>
        <RequestKey />
        <input type="hidden" name="countId" value={countId} />
        <SubmitButton variant="danger">Leave it</SubmitButton>
      </FormFrame>
    </details>
  );
}
