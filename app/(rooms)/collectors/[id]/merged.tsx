import Link from 'next/link';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { InstantText } from '@/app/ui/figures/day-text';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { MergedShown } from '@/lib/collectors/reads/merges';
import css from '../collectors.module.css';
import { apart } from '../twice/actions';

type MergedProps = Readonly<{
  merged: readonly MergedShown[];
  collectorId: string;
  zone: string;
  mayMerge: boolean;
}>;

/** The entries that were found to be the same, with all that stands on them. */
export function Merged({ merged, collectorId, zone, mayMerge }: MergedProps) {
  const link = (
    <Link href={`/collectors/twice?of=${collectorId}`}>Is there twice, under another name</Link>
  );
  if (merged.length === 0) return mayMerge ? <p>{link}</p> : null;
  return (
    <Section title="Also in the address book as" act={mayMerge ? link : null}>
      <ul className={css['card']}>
        {merged.map((entry) => (
          <li key={entry.mergeId}>
            <p>
              <strong>{entry.name}</strong>
              {entry.firm === null ? '' : `, ${entry.firm}`}
            </p>
            <p>
              {[entry.phone, entry.email, entry.address]
                .filter((part) => part !== null)
                .join(' · ')}
            </p>
            {entry.note === '' ? null : <p className={css['note']}>{entry.note}</p>}
            <p className={css['quiet']}>
              {entry.by} found it to be the same as {entry.into},{' '}
              <InstantText at={entry.at} zone={zone} />
            </p>
            {mayMerge ? (
              <FormFrame action={apart} label={`Set ${entry.name} apart again`}>
                <RequestKey />
                <input type="hidden" name="mergeId" value={entry.mergeId} />
                <SubmitButton variant="quiet">
                  Set apart again<span className="heard-only">: {entry.name}</span>
                </SubmitButton>
              </FormFrame>
            ) : null}
          </li>
        ))}
      </ul>
    </Section>
  );
}
