import type { Bench } from '@/lib/studio/reads';
import css from './studio.module.css';

/** The studio at a glance: how much stands at which step, from clay to finished. */
export function Glance({ bench }: Readonly<{ bench: Bench }>) {
  const rows = [
    { name: 'to begin', pieces: sumOf(bench.notBegun) },
    ...bench.rows,
    { name: 'finished', pieces: sumOf(bench.finished) },
  ].filter((row) => row.pieces > 0);
  if (rows.length < 3) return null;
  return (
    <nav aria-label="The studio at a glance">
      <ol className={css['glance']}>
        {rows.map(({ name, pieces }) => (
          <li key={name}>
            <a href={`#at-${idOf(name)}`}>
              <strong>{pieces}</strong> {name}
            </a>
          </li>
        ))}
      </ol>
    </nav>
  );
}

/** The place of a step in the page, from its name. */
export function idOf(name: string): string {
  return name.toLowerCase().replace(/[^a-z0-9]+/g, '-');
}

function sumOf(standing: Bench['notBegun']): number {
  return standing.reduce((sum, one) => sum + one.here.pieces, 0);
}
