import type { ReactNode } from 'react';
import { Caution } from '@/app/ui/page/caution';
import css from './page.module.css';

type WorkingProps = Readonly<{
  /** The steps, each a short sentence with its numbers. */
  steps: readonly string[];
  formula: string;
  source: string;
  caution?: string | null | undefined;
  title?: string | undefined;
  open?: boolean | undefined;
  children?: ReactNode;
}>;

/** How a figure was worked out: the steps, the formula, where it comes from, what to mind. */
export function Working({ steps, formula, source, caution, title, open, children }: WorkingProps) {
  return (
    <details className={css['working']} open={open}>
      <summary>{title ?? 'How this was worked out'}</summary>
      <div className={css['working-inside']}>
        <ol>
          {steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
        <p>
          <strong>In words: </strong>
          {formula}
        </p>
        <p>
          <strong>From: </strong>
          {source}
        </p>
        {caution ? <Caution>{caution}</Caution> : null}
        {children}
      </div>
    </details>
  );
}
