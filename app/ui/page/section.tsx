import type { ReactNode } from 'react';
import css from './page.module.css';

type SectionProps = Readonly<{
  title: string;
  /** For links to this place in the page. */
  id?: string | undefined;
  lead?: ReactNode;
  /** A link or button that belongs to the whole part, at the right of its heading. */
  act?: ReactNode;
  children: ReactNode;
}>;

/** A part of a page under a plain heading. */
export function Section({ title, id, lead, act, children }: SectionProps) {
  return (
    <section className={css['section']} id={id}>
      <div className={css['section-head']}>
        <h2>{title}</h2>
        {act}
      </div>
      {lead ? <div className={css['section-lead']}>{lead}</div> : null}
      {children}
    </section>
  );
}

type ColumnsProps = Readonly<{
  /** What one looks at. */
  wide: ReactNode;
  /** What stands beside it; under it on a phone. */
  beside: ReactNode;
}>;

/** A wall in two columns: what one looks at, and what stands beside it. */
export function Columns({ wide, beside }: ColumnsProps) {
  return (
    <div className={css['columns']}>
      <div className={css['column']}>{wide}</div>
      <div className={css['column']}>{beside}</div>
    </div>
  );
}

/** A raised surface for what belongs together and is handled: the slip, a job, a form. */
export function Slab({ children }: Readonly<{ children: ReactNode }>) {
  return <div className={css['slab']}>{children}</div>;
}
