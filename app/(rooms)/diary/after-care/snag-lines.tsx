import Link from 'next/link';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { formatDay, type Day } from '@/lib/dates/rules';
import type { Snag } from '@/lib/installation/reads/work/snags';
import { putRight } from './actions';
import css from './after-care.module.css';

type SnagLinesProps = Readonly<{
  snags: readonly Snag[];
  today: Day;
  mayMend: boolean;
  /** Names the commission of each: on a list of several. */
  named?: boolean;
}>;

/** What is to be put right, who does it and by when; what is past its day is said so. */
export function SnagLines({ snags, today, mayMend, named }: SnagLinesProps) {
  return (
    <ul className={css['lines']}>
      {snags.map((snag) => (
        <li key={snag.id} data-late={isLate(snag, today) || undefined}>
          <p>
            {snag.words.replace(/[.;]+$/, '')}
            {named ? (
              <>
                {'. '}
                <Link href={`/commissions/${snag.commission.number}#care`}>
                  <cite>{snag.commission.title}</cite>
                </Link>
                , {snag.commission.collector}
              </>
            ) : null}
          </p>
          <p className={css['quiet']}>{standingOf(snag, today)}</p>
          {mayMend && !snag.mended ? <ToMend snag={snag} today={today} /> : null}
        </li>
      ))}
    </ul>
  );
}

function isLate({ mended, mendByOn }: Snag, today: Day): boolean {
  return mended === null && mendByOn < today;
}

function standingOf(snag: Snag, today: Day): string {
  const { mended, mendBy, mendByOn } = snag;
  if (mended) {
    const how = mended.words === '' ? '' : `: ${mended.words}`;
    return `✓ put right on ${formatDay(mended.on, 'long')}${how}`;
  }
  const by = `${mendBy} puts it right by ${formatDay(mendByOn, 'long')}`;
  return isLate(snag, today) ? `${by}; that day has passed` : by;
}

function ToMend({ snag, today }: Readonly<{ snag: Snag; today: Day }>) {
  return (
    <details className={css['more']}>
      <summary>It is put right</summary>
      <FormFrame action={putRight} label={`Put right: ${snag.words}`} layout="row">
        <RequestKey />
        <input type="hidden" name="snagId" value={snag.id} />
        <Field name="words" label="How" width="half" optional maxLength={600} />
        <Field name="on" label="On" kind="day" width="short" defaultValue={today} />
        <SubmitButton variant="quiet">It is put right</SubmitButton>
      </FormFrame>
    </details>
  );
}
