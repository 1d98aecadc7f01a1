'use client';

import { useContext, type ReactNode } from 'react';
import { FormAnswer } from '@/app/ui/form/form-answer';
import css from './asking.module.css';

type FoldedProps = Readonly<{
  title: string;
  /** What is asked inside, in a few words. */
  about: string;
  /** The names of the fields inside: a fault at one of them unfolds it. */
  names: readonly string[];
  open: boolean;
  children: ReactNode;
}>;

/** Questions folded away until somebody asks them, or until one of them needs another look. */
export function Folded({ title, about, names, open, children }: FoldedProps) {
  const answer = useContext(FormAnswer);
  const isFaulty = answer.kind === 'refused' && names.some((name) => name in answer.fields);
  return (
    <details className={css['folded']} open={open || isFaulty}>
      <summary>
        <span className={css['title']}>{title}</span> <span className={css['about']}>{about}</span>
      </summary>
      <div className={css['inside']}>{children}</div>
    </details>
  );
}
