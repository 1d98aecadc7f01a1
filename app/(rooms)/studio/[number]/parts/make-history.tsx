import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import type { PartFiring, PartMoveTold, PartTold } from '@/lib/studio/reads/parts/history';
import { lossCauseWords } from '@/lib/studio/rules/jobs/losing';
import { movedPartWords } from '@/lib/studio/rules/parts/words';
import css from './parts.module.css';

type MakeHistoryProps = Readonly<{ history: PartTold; steps: readonly { name: string }[] }>;

/** What happened to one piece of clay: its firings, its coats of glaze, and its moves, the last first. */
export function MakeHistory({ history, steps }: MakeHistoryProps) {
  const { firings, glazes, moves } = history;
  if (firings.length + glazes.length + moves.length === 0) return null;
  return (
    <div className={css['history']}>
      {firings.length > 0 ? (
        <>
          <h4>Firings</h4>
          <ul>
            {firings.map((firing) => (
              <li key={firing.number}>
                <Link href={`/studio/firings/${firing.number}`}>Firing {firing.number}</Link>,{' '}
                {firing.kiln}, cone {firing.cone}
                {firing.isAgain ? ', once more' : ''}: <WhenFired firing={firing} />
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {glazes.length > 0 ? (
        <>
          <h4>Glaze</h4>
          <ul>
            {glazes.map((laid) => (
              <li key={laid.id}>
                {laid.coats === 1 ? '1 coat' : `${laid.coats} coats`} of {laid.glaze}, bucket{' '}
                {laid.bucket}, <DayText day={laid.on} /> ({laid.by})
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {moves.length > 0 ? (
        <details>
          <summary>Its way so far</summary>
          <ol>
            {moves.toReversed().map((move) => (
              <li key={move.id}>
                {movedPartWords(steps, move)}
                {whyWords(move)}, <DayText day={move.movedOn} /> ({move.by})
                {move.firingNumber === null ? '' : `, after firing ${move.firingNumber}`}
              </li>
            ))}
          </ol>
        </details>
      ) : null}
    </div>
  );
}

function WhenFired({ firing: { litOn, openedOn } }: Readonly<{ firing: PartFiring }>) {
  if (openedOn) {
    return (
      <>
        opened <DayText day={openedOn} />
      </>
    );
  }
  if (!litOn) return <>planned</>;
  return (
    <>
      lit <DayText day={litOn} />, not opened yet
    </>
  );
}

function whyWords({ cause, note }: PartMoveTold): string {
  if (cause === null) return '';
  return `: ${lossCauseWords[cause]}${note ? `, ${note}` : ''}`;
}
