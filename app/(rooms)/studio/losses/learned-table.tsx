import type { RouteLearned } from '@/lib/studio/reads/losses';
import { learnedWords } from '@/lib/studio/rules/losses/words';
import css from './losses.module.css';

/** What each step of a route loses, with the span it lies in drawn on one scale. */
export function LearnedTable({ route }: Readonly<{ route: RouteLearned }>) {
  if (route.steps.length === 0) return <p>Nothing is lost on it so far.</p>;
  const widest = Math.max(...route.steps.map(({ learned }) => learned.highShare));
  return (
    <table className={css['learned']}>
      <thead>
        <tr>
          <th scope="col">Step</th>
          <th scope="col" className={css['figure']}>
            Of 100
          </th>
          <th scope="col">Known from</th>
        </tr>
      </thead>
      <tbody>
        {route.steps.map(({ step, learned }) => (
          <tr key={step}>
            <th scope="row">{step}</th>
            <td className={css['figure']}>{Math.round(learned.share * 1_000) / 10}</td>
            <td>
              <svg
                className={css['span']}
                viewBox="0 0 100 10"
                preserveAspectRatio="none"
                aria-hidden="true"
              >
                <line x1="0" x2="100" y1="5" y2="5" />
                <rect
                  x={(learned.lowShare / widest) * 100}
                  width={((learned.highShare - learned.lowShare) / widest) * 100}
                  y="2"
                  height="6"
                />
                <rect
                  className={css['likely']}
                  x={(learned.share / widest) * 100 - 0.6}
                  width="1.2"
                  height="10"
                />
              </svg>
              <span className={css['said']}>{learnedWords(learned)}</span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
