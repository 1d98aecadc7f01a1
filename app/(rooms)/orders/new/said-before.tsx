import type { SaidBefore as Said } from '@/lib/orders/rules/before';
import css from '../orders.module.css';

/** What mould, glaze, kiln and day make of a wish; what speaks against it is marked. */
export function SaidBefore({ said }: Readonly<{ said: readonly Said[] }>) {
  return (
    <ul className={css['said']} aria-live="polite">
      {said.map(({ about, mind, words }) => (
        <li key={about}>
          <span aria-hidden="true">{mind ? '!' : '✓'}</span>
          <span data-mind={mind || undefined}>{words}</span>
        </li>
      ))}
    </ul>
  );
}
