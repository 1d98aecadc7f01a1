import Link from 'next/link';
import { FindForm } from '@/app/ui/form/find-form';
import { Money } from '@/app/ui/figures/money';
import type { ChosenPiece } from '@/lib/holds/reads/chosen-pieces';
import { choose, leaveOut, type Chosen } from '@/lib/holds/rules/chosen';
import type { Piece } from '@/lib/stock/reads';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import { ChosenFields } from './choose-collector';
import { choosingHref, type Choosing } from './choosing';
import css from './holds.module.css';

type ChoosePiecesProps = Readonly<{
  base: string;
  choosing: Choosing;
  /** The chosen ones as they stand at the counter's place. */
  chosen: readonly ChosenPiece[];
  /** What the letters in the field find. */
  found: readonly Piece[];
  lengthUnit: LengthSystem;
  /** What the field is called once a piece is chosen. */
  another?: string | undefined;
}>;

/** Which pieces: scanned, or found by letters; each is taken off again by a touch. */
export function ChoosePieces(props: ChoosePiecesProps) {
  const { base, choosing, chosen, found, lengthUnit, another = 'One more piece' } = props;
  return (
    <div className={css['step']}>
      {chosen.map((each) => (
        <ChosenLine
          key={`${each.one.code} ${each.one.editionNumber}`}
          {...{ base, choosing, each }}
        />
      ))}
      <FindForm
        action={base}
        label={chosen.length === 0 ? 'Which piece? Scan it, or a few letters' : another}
        letters={choosing.find}
      >
        <ChosenFields choosing={choosing} />
      </FindForm>
      {choosing.find === '' ? null : (
        <ul className={css['found']} aria-label="Pieces">
          {found.map((piece) => (
            <li key={piece.id}>
              <Link
                href={choosingHref(base, choosing, { pieces: withOneMore(choosing, piece) })}
                prefetch={false}
              >
                <span>
                  <em>{piece.title}</em>
                  <br />
                  <span className={css['quiet']}>
                    {piece.what} · {formatSize(piece, lengthUnit)} · {piece.code}
                  </span>
                </span>
                <span className={css['quiet']}>{freeWords(piece)}</span>
              </Link>
            </li>
          ))}
          {found.length === 0 ? <li>Nothing is like “{choosing.find}”.</li> : null}
        </ul>
      )}
    </div>
  );
}

function withOneMore({ pieces }: Choosing, { code }: Piece): Chosen[] {
  return choose(pieces, { code, quantity: 1, editionNumber: null });
}

function freeWords({ onHand, held }: Piece): string {
  const free = onHand - held;
  if (onHand === 0) return 'none here';
  if (free <= 0) return onHand === 1 ? 'held' : `all ${onHand} held`;
  return `${free} free`;
}

type LineProps = Readonly<{ base: string; choosing: Choosing; each: ChosenPiece }>;

function ChosenLine({ base, choosing, each }: LineProps) {
  const { one, title, what, priceCents, numbers } = each;
  const without = leaveOut(choosing.pieces, one);
  return (
    <div className={css['chosen']}>
      <span className={css['words']}>
        <span className={css['title']}>{title}</span>
        <span className={css['quiet']}>{what}</span>
        {one.editionNumber === null ? null : <span>Number {one.editionNumber}</span>}
        {numbers.length > 0 && one.editionNumber === null ? (
          <span>
            Which number?{' '}
            {numbers.map((number) => (
              <Link
                key={number}
                className={css['phone']}
                href={choosingHref(base, choosing, {
                  pieces: choose(without, { ...one, quantity: 1, editionNumber: number }),
                })}
                prefetch={false}
              >
                {number}{' '}
              </Link>
            ))}
          </span>
        ) : null}
      </span>
      <span>
        {one.quantity > 1 ? `${one.quantity} × ` : null}
        <Money cents={priceCents} />
      </span>
      <Link href={choosingHref(base, choosing, { pieces: without })} prefetch={false}>
        Take it off
      </Link>
    </div>
  );
}
