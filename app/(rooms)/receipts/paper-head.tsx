import { addressLines } from '@/lib/documents/rules';
import type { Gallery } from '@/lib/platform/settings';
import css from './receipts.module.css';

/** The gallery's name and address, as they stand at the head of every paper. */
export function PaperHead({ gallery }: Readonly<{ gallery: Gallery }>) {
  return (
    <header className={css['paper-head']}>
      <p className={css['gallery']}>{gallery.name}</p>
      {gallery.tagline ? <p className={css['tagline']}>{gallery.tagline}</p> : null}
      {addressLines(gallery).map((line) => (
        <p key={line} className={css['small']}>
          {line}
        </p>
      ))}
    </header>
  );
}
