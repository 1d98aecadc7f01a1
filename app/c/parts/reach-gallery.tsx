import type { Gallery } from '@/lib/platform/settings';
import css from '../page.module.css';

/** How the gallery is reached, at the foot of each page. */
export function ReachGallery({ gallery }: Readonly<{ gallery: Gallery }>) {
  const { name, street, city, state, postcode, phone, email } = gallery;
  const place = [street, [city, state, postcode].filter(Boolean).join(' ')].filter(Boolean);
  return (
    <footer className={css['reach']}>
      <p>
        <strong>{name}</strong>
        {place.length > 0 ? `, ${place.join(', ')}` : null}
      </p>
      <p className={css['ways']}>
        {phone ? <a href={`tel:${phone.replace(/[^+\d]/g, '')}`}>{phone}</a> : null}
        {email ? <a href={`mailto:${email}`}>{email}</a> : null}
      </p>
    </footer>
  );
}
