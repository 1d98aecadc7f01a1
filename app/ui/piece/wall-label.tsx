import Link from 'next/link';
import type { ReactNode } from 'react';
import { Money } from '@/app/ui/figures/money';
import type { Currency } from '@/lib/money/rules';
import { Mark, type PieceMark } from './mark';
import css from './piece.module.css';

/** What a wall label says. `priceCents` null: not for sale; `count` null: not counted here. */
export type WallLabelProps = Readonly<{
  title: string;
  href?: string | undefined;
  /** Kind and colour in words: "relief tile, celadon over iron slip". */
  what: string;
  size?: string | undefined;
  code?: string | undefined;
  priceCents?: bigint | null | undefined;
  currency?: Currency | undefined;
  count?: number | null | undefined;
  mark?: PieceMark | null | undefined;
  /** Instead of the mark's own word: "held for Mrs Aldous till Friday". */
  markText?: string | undefined;
  children?: ReactNode;
}>;

/** The caption of a piece, set like a wall label: the title in italics, what, size and code, price. */
export function WallLabel(props: WallLabelProps) {
  const { title, href, what, size, code, priceCents, currency, count, mark, markText } = props;
  const measured = [size, code].filter(Boolean).join(' · ');
  return (
    <div className={css['label']}>
      <p className={css['label-title']}>{href ? <Link href={href}>{title}</Link> : title}</p>
      <p className={css['label-what']}>{what}</p>
      {measured ? <p className={css['label-size']}>{measured}</p> : null}
      <p className={css['label-price']}>
        {typeof priceCents === 'bigint' ? <Money cents={priceCents} currency={currency} /> : null}
        {typeof count === 'number' ? (
          <span className={css['count']}>{count === 0 ? 'none here' : `${count} here`}</span>
        ) : null}
      </p>
      {mark ? <Mark mark={mark} text={markText} /> : null}
      {props.children}
    </div>
  );
}
