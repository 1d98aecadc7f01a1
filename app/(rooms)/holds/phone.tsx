import css from './holds.module.css';

/** A telephone number to be touched; nothing when there is none. */
export function Phone({ number }: Readonly<{ number: string | null }>) {
  const digits = (number ?? '').replace(/[^\d+]/g, '');
  if (digits === '') return null;
  return (
    <a href={`tel:${digits}`} className={css['phone']}>
      {number}
    </a>
  );
}
