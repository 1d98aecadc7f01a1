import type { JobStanding } from '@/lib/studio/reads/standing';
import { piecesWords, stepDaysWords } from '@/lib/studio/rules/words';
import css from '../studio.module.css';

const said = { done: 'done', now: 'now', to_come: 'to come' } as const;

/** The whole route in order: what is done, where pieces stand now, what is to come, with its days. */
export function JobRouteList({ job }: Readonly<{ job: JobStanding }>) {
  return (
    <ol className={css['route']}>
      {job.steps.map((step, index) => {
        const position = index + 1;
        const here = job.standings.find((standing) => standing.position === position);
        const state = here ? 'now' : stateOf(job, position);
        return (
          <li key={step.name} data-state={state} aria-current={here ? 'step' : undefined}>
            <span className={css['route-peg']} aria-hidden="true" />
            <span className={css['route-name']}>{step.name}</span>
            <span className={css['route-days']}>
              {here ? <strong>{piecesWords(here.pieces)} now</strong> : said[state]}
              {' · '}
              {stepDaysWords(step)}
            </span>
          </li>
        );
      })}
    </ol>
  );
}

/** Done when nothing stands at or before it any more. */
function stateOf(job: JobStanding, position: number): 'done' | 'to_come' {
  const behind = job.standings.some((standing) => standing.position <= position);
  return behind ? 'to_come' : 'done';
}
