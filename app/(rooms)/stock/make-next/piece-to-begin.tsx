import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Money } from '@/app/ui/figures/money';
import { Working } from '@/app/ui/page/working';
import { Picture } from '@/app/ui/piece/picture';
import type { PieceToMake } from '@/lib/reports/reads/make-next';
import {
  aMonth,
  makeNextCaution,
  makeNextFormula,
  makeNextSource,
} from '@/lib/reports/rules/make-next';
import css from './make-next.module.css';

type PieceToBeginProps = Readonly<{ piece: PieceToMake; mayMake: boolean }>;

/** One piece that ran low: how many to begin, why, and the button that begins them. */
export function PieceToBegin({ piece, mayMake }: PieceToBeginProps) {
  const { code, title, what, start, wanted, lostCents, working } = piece;
  return (
    <li className={css['piece']}>
      <div className={css['picture']}>
        {piece.picture ? (
          <Picture
            src={`/files/${piece.picture.fileId}`}
            alt=""
            width={piece.picture.widthPx}
            height={piece.picture.heightPx}
            size="thumb"
          />
        ) : null}
      </div>
      <div className={css['words']}>
        <p className={css['title']}>
          <Link href={`/stock/${code}`}>{title}</Link>
        </p>
        <p className={css['quiet']}>
          {what} · {code}
        </p>
        <p className={css['where']}>{whereWords(piece)}</p>
      </div>
      <div className={css['lost']}>
        <Money cents={lostCents} />
        <span className={css['quiet']}> would be lost</span>
      </div>
      <div className={css['act']}>
        <p>
          {wanted} wanted, <strong>begin {start}</strong>
        </p>
        {mayMake ? (
          <ButtonLink href={jobHref(piece)} size="counter">
            Begin {start}
          </ButtonLink>
        ) : null}
      </div>
      <div className={css['working']}>
        <Working
          steps={working}
          formula={makeNextFormula}
          source={makeNextSource}
          caution={makeNextCaution}
        />
      </div>
    </li>
  );
}

function jobHref({ skuId, start, technique }: PieceToMake): string {
  const query = new URLSearchParams({ piece: skuId, pieces: String(start), technique });
  return `/studio/new?${query.toString()}`;
}

function whereWords(piece: PieceToMake): string {
  const { here, elsewhere, inMaking, held, ordered, rate } = piece;
  const parts = [
    here === 0 ? 'none here' : `${here} here`,
    elsewhere > 0 ? `${elsewhere} elsewhere` : '',
    inMaking > 0 ? `${inMaking} in the making` : '',
    held > 0 ? `${held} held` : '',
    ordered > 0 ? `${ordered} ordered` : '',
    `sells ${aMonth(rate.perDay)} a month`,
  ];
  return parts.filter((part) => part !== '').join(', ');
}
