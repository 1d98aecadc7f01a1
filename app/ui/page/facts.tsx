import type { ReactNode } from 'react';
import css from './page.module.css';

/** One fact; `value` null says that nobody knows it yet. */
export type Fact = Readonly<{
  name: string;
  value: ReactNode | null;
  notKnown?: string | undefined;
}>;

/** Facts by name. What is not known is said, never left blank. */
export function Facts({ facts }: Readonly<{ facts: readonly Fact[] }>) {
  return (
    <dl className={css['facts']}>
      {facts.map((fact) => (
        <div key={fact.name} className={css['fact']}>
          <dt>{fact.name}</dt>
          <dd>
            {fact.value ?? (
              <span className={css['not-known']}>{fact.notKnown ?? 'not known yet'}</span>
            )}
          </dd>
        </div>
      ))}
    </dl>
  );
}
