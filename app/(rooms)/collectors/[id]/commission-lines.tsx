import Link from 'next/link';
import { Picture } from '@/app/ui/piece/picture';
import type { CommissionInList } from '@/lib/commissions/reads';
import css from '../collectors.module.css';

type CommissionLinesProps = Readonly<{ commissions: readonly CommissionInList[] }>;

/** A collector's commissions, each with where it stands. */
export function CommissionLines({ commissions }: CommissionLinesProps) {
  if (commissions.length === 0) {
    return <p className={css['quiet']}>They have not asked for a commission yet.</p>;
  }
  return (
    <ul className={css['mine']}>
      {commissions.map(({ number, title, sentence, picture }) => (
        <li key={number}>
          {picture ? <Picture {...picture} alt="" size="thumb" /> : <span />}
          <div>
            <Link href={`/commissions/${number}`} className={css['name']}>
              {title}
            </Link>
            <p className={css['quiet']}>
              Commission {number}. {sentence}
            </p>
          </div>
        </li>
      ))}
    </ul>
  );
}
