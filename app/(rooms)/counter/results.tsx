import Link from 'next/link';
import { Money } from '@/app/ui/figures/money';
import { Mark } from '@/app/ui/piece/mark';
import { Picture } from '@/app/ui/piece/picture';
import type { Piece } from '@/lib/stock/reads';
import { putOn } from '@/lib/sales/rules/slip';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import { counterHref, type CounterPlace } from './address';
import css from './counter.module.css';

type ResultsProps = Readonly<{
  label: string;
  pieces: readonly Piece[];
  place: CounterPlace;
  lengthUnit: LengthSystem;
}>;

/** Pieces to be touched: one touch puts one on the slip. */
export function Results({ label, pieces, place, lengthUnit }: ResultsProps) {
  return (
    <ul className={css['results']} aria-label={label}>
      {pieces.map((piece) => (
        <li key={piece.id}>
          <Result piece={piece} place={place} lengthUnit={lengthUnit} />
        </li>
      ))}
    </ul>
  );
}

type ResultProps = Readonly<{ piece: Piece; place: CounterPlace; lengthUnit: LengthSystem }>;

function Result({ piece, place, lengthUnit }: ResultProps) {
  const taken = place.slip.find((entry) => entry.sku === piece.code)?.quantity ?? 0;
  const left = piece.onHand - taken;
  const href =
    left > 0
      ? counterHref({ ...place, slip: putOn(place.slip, piece.code) })
      : counterHref(place, { short: piece.code });
  return (
    <Link href={href} prefetch={false} scroll={false} className={css['result']}>
      {piece.picture ? (
        <Picture {...piece.picture} alt="" size="thumb" />
      ) : (
        <span className={css['bare']} aria-hidden="true" />
      )}
      <span className={css['result-words']}>
        <span className={css['result-title']}>{piece.title}</span>
        <span className={css['quiet']}>
          {piece.what} · {formatSize(piece, lengthUnit)} · {piece.code}
        </span>
      </span>
      <span className={css['result-price']}>
        <Money cents={piece.priceCents} size="strong" />
        <Here left={left} taken={taken} elsewhere={piece.elsewhere} />
      </span>
    </Link>
  );
}

function Here({
  left,
  taken,
  elsewhere,
}: Readonly<Record<'left' | 'taken' | 'elsewhere', number>>) {
  if (left > 0) return <span className={css['quiet']}>{left} here</span>;
  if (taken > 0) return <span className={css['quiet']}>all on the slip</span>;
  return (
    <Mark mark="sold" text={elsewhere > 0 ? `none here, ${elsewhere} elsewhere` : 'none here'} />
  );
}
