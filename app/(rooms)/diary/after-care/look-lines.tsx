import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { addDays, formatDay, type Day } from '@/lib/dates/rules';
import type { Look } from '@/lib/installation/reads/care/looks';
import { afterCareAsks, afterCareWords } from '@/lib/installation/rules/care/due';
import { lookedAfter } from './actions';
import css from './after-care.module.css';

/** A look may be done that much early: whoever is there anyway looks. */
const daysEarly = 30;

type LookLinesProps = Readonly<{
  looks: readonly Look[];
  today: Day;
  may: Readonly<{ look: boolean; book: boolean }>;
  /** Names the commission of each: on a list of several. */
  named?: boolean;
}>;

/** The looks after what was handed over: what each asks, when it is due, and how it went. */
export function LookLines({ looks, today, may, named }: LookLinesProps) {
  return (
    <ul className={css['lines']}>
      {looks.map((look) => (
        <li key={look.id} data-late={isLate(look, today) || undefined}>
          <p>
            <strong>{afterCareWords[look.kind]}</strong>, {whenOf(look, today)}
            {named ? <ForWhom look={look} /> : null}
          </p>
          {look.done ? (
            <p className={css['quiet']}>
              ✓ {formatDay(look.done.on, 'long')}: {look.done.words}
            </p>
          ) : (
            <p className={css['quiet']}>{afterCareAsks[look.kind]}</p>
          )}
          {look.done ? null : <ToDo look={look} today={today} may={may} />}
        </li>
      ))}
    </ul>
  );
}

function isLate({ done, dueOn }: Look, today: Day): boolean {
  return done === null && dueOn < today;
}

function whenOf(look: Look, today: Day): string {
  const on = formatDay(look.dueOn, 'long');
  if (look.done) return `due ${on}`;
  return isLate(look, today) ? `due since ${on}` : `due ${on}`;
}

function ForWhom({ look: { commission, collector } }: Readonly<{ look: Look }>) {
  return (
    <>
      {': '}
      <Link href={`/commissions/${commission.number}#care`}>
        <cite>{commission.title}</cite>
      </Link>
      , {collector.name}
      {collector.phone ? (
        <>
          {', '}
          <a href={`tel:${collector.phone.replace(/[^+\d]/g, '')}`}>{collector.phone}</a>
        </>
      ) : null}
    </>
  );
}

type ToDoProps = Readonly<{ look: Look; today: Day; may: LookLinesProps['may'] }>;

function ToDo({ look, today, may }: ToDoProps) {
  return (
    <div className={css['acts']}>
      {may.look && look.dueOn <= addDays(today, daysEarly) ? (
        <details className={css['more']}>
          <summary>It is done</summary>
          <FormFrame action={lookedAfter} label={`Done: ${afterCareWords[look.kind]}`} layout="row">
            <RequestKey />
            <input type="hidden" name="afterCareId" value={look.id} />
            <Field name="words" label="How it went" width="half" maxLength={1000} />
            <Field name="on" label="On" kind="day" width="short" defaultValue={today} />
            <SubmitButton variant="quiet">It is done</SubmitButton>
          </FormFrame>
        </details>
      ) : null}
      {may.book ? (
        <ButtonLink
          href={`/diary/book?commission=${look.commission.number}&kind=after_care`}
          variant="quiet"
        >
          Book a visit
        </ButtonLink>
      ) : null}
    </div>
  );
}
