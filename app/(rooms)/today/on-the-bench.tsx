import Link from 'next/link';
import { Section } from '@/app/ui/page/section';
import type { OnBench } from '@/lib/studio/reads';
import { piecesWords } from '@/lib/studio/rules/words';
import css from './today.module.css';

const toldMost = 6;

/** Jobs whose pieces have stood at a step beyond its longest days. */
export function OnTheBench({ standing }: Readonly<{ standing: readonly OnBench[] }>) {
  if (standing.length === 0) return null;
  const more = standing.length - toldMost;
  return (
    <Section
      title="Standing too long"
      act={more > 0 ? <Link href="/studio">{more} more in the studio</Link> : null}
    >
      <ul className={css['lines']}>
        {standing.slice(0, toldMost).map(({ job, here }) => (
          <li key={`${job.number}-${here.position}`}>
            <Link href={`/studio/${job.number}`} className={css['line']}>
              <cite>{job.title}</cite>: {piecesWords(here.pieces)} at {here.name} for {here.days}{' '}
              days, commonly {here.step?.longestDays} at the longest.
            </Link>
          </li>
        ))}
      </ul>
    </Section>
  );
}
