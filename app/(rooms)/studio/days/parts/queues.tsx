import Link from 'next/link';
import type { Day } from '@/lib/dates/rules';
import type { ConeQueue, KilnFill } from '@/lib/studio/rules/forecast/telling/queues';
import { piecesWords, shortDay } from '@/lib/studio/rules/words';
import css from '../days.module.css';

type QueuesProps = Readonly<{ queues: readonly ConeQueue[]; todayOn: Day }>;

/** What waits for the kilns, and when each would be lit at the latest. */
export function Queues({ queues, todayOn }: QueuesProps) {
  if (queues.length === 0) return <p className={css['quiet']}>Nothing waits for a kiln today.</p>;
  return (
    <ul className={css['queues']}>
      {queues.map((queue) => (
        <li key={queue.cone}>
          <h3>Cone {queue.cone}</h3>
          <p>
            {piecesWords(queue.pieces)} {queue.pieces === 1 ? 'waits' : 'wait'}
            {queue.sinceOn ? `, the longest since ${shortDay(queue.sinceOn, todayOn)}` : ''}.
          </p>
          {queue.kilns.map((fill) => (
            <p key={fill.name} className={css['quiet']}>
              {fillSentence(fill, todayOn)}
            </p>
          ))}
        </li>
      ))}
      <li>
        <Link href="/studio/kilns">Look at the kilns</Link>
      </li>
    </ul>
  );
}

function fillSentence(fill: KilnFill, todayOn: Day): string {
  const { name, fillPercent, leastFillPercent, atLatestOn } = fill;
  const fills = `They fill the ${name.replace(/^the /, '')} to ${fillPercent} of 100.`;
  if (fillPercent >= leastFillPercent) return `${fills} That is enough to light it.`;
  const latest = atLatestOn
    ? ` or ${shortDay(atLatestOn, todayOn) === shortDay(todayOn, todayOn) ? 'today' : `on ${shortDay(atLatestOn, todayOn)}`} at the latest`
    : '';
  return `${fills} It is lit from ${leastFillPercent} on${latest}.`;
}
