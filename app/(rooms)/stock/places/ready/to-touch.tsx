import Link from 'next/link';
import type { PieceStanding } from '@/lib/stock/reads/moves/places';
import { layReady } from '@/lib/stock/rules/moves/move';
import { readyHref, type ReadyAddress } from './address';
import css from './ready.module.css';

type ToTouchProps = Readonly<{
  address: ReadyAddress;
  pieces: readonly PieceStanding[];
  label: string;
}>;

/** Pieces that stand at the place, to be touched; a numbered piece by its number. */
export function ToTouch({ address, pieces, label }: ToTouchProps) {
  return (
    <ul className={css['found']} aria-label={label}>
      {pieces.map((piece) => (
        <li key={piece.id}>
          {piece.numbers.length > 0 ? (
            <Numbered address={address} piece={piece} />
          ) : (
            <Link
              className={css['piece']}
              href={hrefOf(address, piece, null)}
              prefetch={false}
              scroll={false}
            >
              <Words piece={piece} />
              <span className={css['there']}>{thereWords(piece)}</span>
            </Link>
          )}
        </li>
      ))}
    </ul>
  );
}

function Numbered({ address, piece }: Readonly<{ address: ReadyAddress; piece: PieceStanding }>) {
  return (
    <div className={css['numbered']}>
      <Words piece={piece} />
      <div className={css['numbers']}>
        {piece.numbers.slice(0, 60).map((number) => (
          <Link
            key={number}
            href={hrefOf(address, piece, number)}
            prefetch={false}
            scroll={false}
            aria-label={`Number ${number} of ${piece.title}`}
          >
            {number}
          </Link>
        ))}
      </div>
    </div>
  );
}

function Words({ piece }: Readonly<{ piece: PieceStanding }>) {
  return (
    <span className={css['words']}>
      <span className={css['title']}>{piece.title}</span>
      <span className={css['quiet']}>
        {piece.code} · {piece.what}
      </span>
    </span>
  );
}

function thereWords({ there, heldThere }: PieceStanding): string {
  return heldThere === 0 ? `${there} there` : `${there} there, ${heldThere} held`;
}

function hrefOf(address: ReadyAddress, piece: PieceStanding, number: number | null): string {
  const laid = layReady(address.ready, { sku: piece.code, quantity: 1, number });
  return readyHref(address, laid, address.page);
}
