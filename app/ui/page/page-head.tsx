import Link from 'next/link';
import type { ReactNode } from 'react';
import { classes } from '@/app/ui/classes';
import css from './page.module.css';

type PageHeadProps = Readonly<{
  title: string;
  /** The title is that of a work and is set in italics. */
  work?: boolean | undefined;
  /** One sentence under the title. */
  lead?: ReactNode;
  back?: Readonly<{ href: string; name: string }> | undefined;
  /** The buttons of the page. */
  children?: ReactNode;
}>;

/** The head of a page: where one came from, what it is, one sentence, and what can be done. */
export function PageHead({ title, work, lead, back, children }: PageHeadProps) {
  return (
    <header className={css['head']}>
      <div className={css['head-words']}>
        {back ? (
          <Link href={back.href} className={classes(css['back'], 'not-on-paper')}>
            <span aria-hidden="true">← </span>
            {back.name}
          </Link>
        ) : null}
        <h1 className={classes(css['title'], work && 'work-title')}>{title}</h1>
        {lead ? <div className={css['lead']}>{lead}</div> : null}
      </div>
      {children ? <div className={css['acts']}>{children}</div> : null}
    </header>
  );
}
