import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { PersonOnCard } from '@/lib/collectors/reads/card';
import css from '../../collectors.module.css';
import { keepTheirPerson } from './actions';
import { TakeOff } from './take-off';

type PeopleProps = Readonly<{
  people: readonly PersonOnCard[];
  collectorId: string;
  mayWrite: boolean;
}>;

/** Who belongs to a household or a firm, and how each of them likes to be reached. */
export function People({ people, collectorId, mayWrite }: PeopleProps) {
  return (
    <>
      {people.length === 0 ? (
        <p className={css['quiet']}>Nobody besides the name above yet.</p>
      ) : (
        <ul className={css['card']}>
          {people.map((person) => (
            <li key={person.id}>
              <One person={person} />
              {mayWrite ? (
                <details>
                  <summary>Change {person.name}</summary>
                  <PersonForm person={person} collectorId={collectorId} />
                  <TakeOff
                    {...{ collectorId }}
                    part="person"
                    partId={person.id}
                    what={person.name}
                  />
                </details>
              ) : null}
            </li>
          ))}
        </ul>
      )}
      {mayWrite ? (
        <details>
          <summary>Add somebody</summary>
          <PersonForm person={null} collectorId={collectorId} />
        </details>
      ) : null}
    </>
  );
}

function One({ person }: Readonly<{ person: PersonOnCard }>) {
  const { name, said, part, email, phone, reach } = person;
  return (
    <>
      <p>
        <strong>{name}</strong>
        {said === '' ? '' : ` (said “${said}”)`}
        {part === '' ? '' : `, ${part}`}
      </p>
      {phone || email ? (
        <p>
          {phone ? <a href={`tel:${phone}`}>{phone}</a> : null}
          {phone && email ? ' · ' : null}
          {email ? (
            <a href={`mailto:${email}`} className={css['mail']}>
              {email}
            </a>
          ) : null}
        </p>
      ) : null}
      {reach === '' ? null : <p className={css['quiet']}>{reach}</p>}
    </>
  );
}

type PersonFormProps = Readonly<{ person: PersonOnCard | null; collectorId: string }>;

function PersonForm({ person, collectorId }: PersonFormProps) {
  const was = person ?? { name: '', said: '', part: '', email: '', phone: '', reach: '' };
  return (
    <FormFrame action={keepTheirPerson} label={person ? `Change ${person.name}` : 'Add somebody'}>
      <RequestKey />
      <input type="hidden" name="collectorId" value={collectorId} />
      <input type="hidden" name="personId" value={person?.id ?? ''} />
      <Field name="name" label="Name" defaultValue={was.name} autoComplete="off" required />
      <Field
        name="said"
        label="How it is said"
        defaultValue={was.said}
        placeholder="OH-deel"
        optional
      />
      <Field
        name="part"
        label="Their part"
        hint="Such as: her mother, who buys the gifts; says yes to colours; pays."
        defaultValue={was.part}
        optional
      />
      <div className={css['pair']}>
        <Field
          {...{ name: 'phone', label: 'Telephone', kind: 'telephone' }}
          defaultValue={was.phone ?? ''}
          optional
        />
        <Field
          {...{ name: 'email', label: 'Mail', kind: 'email' }}
          defaultValue={was.email ?? ''}
          optional
        />
      </div>
      <Field
        name="reach"
        label="How they like to be reached"
        hint="Such as: calls before six, never at work."
        defaultValue={was.reach}
        optional
      />
      <SubmitButton variant="quiet">{person ? 'Keep the changes' : 'Add them'}</SubmitButton>
    </FormFrame>
  );
}
