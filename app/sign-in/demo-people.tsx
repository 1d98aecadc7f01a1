import { roleWords } from '@/lib/access/rules';
import type { DemoPerson } from '@/lib/access/reads/demo';
import css from './door.module.css';

/** Whom one may be in the demo gallery, and the passwords that anyone may know. */
export function DemoPeople({ people }: Readonly<{ people: readonly DemoPerson[] }>) {
  return (
    <section className={css['demo']} aria-labelledby="demo-people">
      <h2 id="demo-people" className={css['demo-title']}>
        This is the demo gallery
      </h2>
      <p>Everything in it is invented. Come in as any of these people:</p>
      <dl className={css['people']}>
        {people.map((person) => (
          <div key={person.signInName} className={css['person']}>
            <dt>
              {person.name}, <span className={css['part']}>{roleWords[person.role].name}</span>
            </dt>
            <dd>
              Name <kbd className={css['key']}>{person.signInName}</kbd>, password{' '}
              <kbd className={css['key']}>{person.password}</kbd>
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
