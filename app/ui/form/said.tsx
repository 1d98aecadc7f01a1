import css from './form.module.css';

/** What stands beside a question: a hint, and what is wrong with the answer. */
export type SaidBeside = Readonly<{ hint?: string | undefined; fault?: string | undefined }>;

/** The ids of hint and fault, for the control to be described by. */
export function describedBy(id: string, { hint, fault }: SaidBeside): string | undefined {
  const ids = [hint && `${id}-hint`, fault && `${id}-fault`].filter(Boolean);
  return ids.length > 0 ? ids.join(' ') : undefined;
}

/** The hint under a question. */
export function Hint({ id, hint }: Readonly<{ id: string; hint: string | undefined }>) {
  if (!hint) return null;
  return (
    <p id={`${id}-hint`} className={css['hint']}>
      {hint}
    </p>
  );
}

/** What is wrong with an answer, under it. */
export function Fault({ id, fault }: Readonly<{ id: string; fault: string | undefined }>) {
  if (!fault) return null;
  return (
    <p id={`${id}-fault`} className={css['fault']}>
      {fault}
    </p>
  );
}
