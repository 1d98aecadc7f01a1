import Link from 'next/link';
import type { ReadyShown } from '@/lib/stock/reads/moves/ready';
import { setReady } from '@/lib/stock/rules/moves/move';
import { readyHref, type ReadyAddress } from './address';
import css from './ready.module.css';

type ReadyListProps = Readonly<{ address: ReadyAddress; lines: readonly ReadyShown[] }>;

/** What lies ready, line by line, each with one fewer, one more, and why it cannot go. */
export function ReadyList({ address, lines }: ReadyListProps) {
  if (lines.length === 0) {
    return <p className={css['quiet']}>Nothing yet. What you scan or touch comes here.</p>;
  }
  return (
    <ul className={css['lines']} aria-label="Lies ready">
      {lines.map((line) => (
        <li key={`${line.sku} ${line.number ?? ''}`} className={css['line']}>
          <div className={css['words']}>
            <span className={css['title']}>{line.piece?.title ?? line.sku}</span>
            <span className={css['quiet']}>
              {line.sku}
              {line.number === null ? '' : ` · number ${line.number}`}
              {line.piece ? ` · ${line.piece.what}` : ''}
            </span>
            {line.why === null ? null : <span className={css['why']}>{line.why}</span>}
          </div>
          <Steps address={address} line={line} />
        </li>
      ))}
    </ul>
  );
}

function Steps({ address, line }: Readonly<{ address: ReadyAddress; line: ReadyShown }>) {
  const { ready } = address;
  const name = line.piece?.title ?? line.sku;
  const to = (quantity: number) => readyHref(address, setReady(ready, line, quantity));
  if (line.number !== null) {
    return (
      <div className={css['steps']}>
        <Link href={to(0)} prefetch={false} scroll={false} aria-label={`Take ${name} off`}>
          ✕
        </Link>
      </div>
    );
  }
  return (
    <div className={css['steps']}>
      <Link
        href={to(line.quantity - 1)}
        prefetch={false}
        scroll={false}
        aria-label={`One ${name} fewer`}
      >
        −
      </Link>
      <span className={css['count']}>{line.quantity}</span>
      <Link
        href={to(line.quantity + 1)}
        prefetch={false}
        scroll={false}
        aria-label={`One ${name} more`}
      >
        +
      </Link>
    </div>
  );
}
