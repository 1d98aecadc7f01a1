'use client';

import { Button } from '@/app/ui/button/button';
import { Notice } from '@/app/ui/page/notice';
import { entryWords } from '@/lib/installation/rules/work/on-device';
import { useWorkDay } from './day-shown';
import type { Line } from './kept/outbox';
import type { PageKept } from './kept/keep-page';
import type { Kept } from './kept/store';
import css from './work.module.css';

const lineWords: Readonly<Record<Line, string>> = {
  idle: 'It is sent as soon as there is a line.',
  sending: 'It is being sent…',
  none: 'There is no line to the gallery just now; it is tried again by itself.',
  signed_out: 'You were signed out in the meantime. Sign in again, and it is sent.',
};

const opensWords: Readonly<Record<PageKept, string>> = {
  yes: 'This page opens again on this device without a line.',
  not_here:
    'At this address the page cannot be opened again without a line: it is not a safe one (https). Leave it open; what you tick is kept.',
  no: 'This page is not kept on this device yet. Leave it open where there is no line.',
};

/** What is kept on this device and not sent yet, what was refused and why, and what one can do. */
export function NotSent({ opens }: Readonly<{ opens: PageKept | null }>) {
  const { view, day } = useWorkDay();
  const waiting = view.kept.filter(({ standing }) => standing === 'waiting');
  const refused = view.kept.filter(({ standing }) => standing === 'refused');
  return (
    <div className={css['kept']} data-kept={view.isRead ? waiting.length : undefined}>
      {waiting.length > 0 ? (
        <Notice kind="caution" title={waitingTitle(waiting.length)}>
          {lineWords[view.line]}
          {view.line === 'signed_out' ? (
            <>
              {' '}
              <a href={`/sign-in?to=/diary/${day.id}/work`}>Sign in</a>
            </>
          ) : null}
          <Listed kept={waiting} />
        </Notice>
      ) : null}
      {refused.map((each) => (
        <Refused key={each.entry.id} kept={each} />
      ))}
      <p className={css['quiet']} role="status">
        {view.isRead && waiting.length === 0 ? 'Everything on this device is sent. ' : ''}
        {view.canKeep
          ? ''
          : 'This browser keeps nothing when the page is closed: open it in an ordinary window. '}
        {opens && !day.isSigned && !day.isCalledOff ? opensWords[opens] : ''}
      </p>
    </div>
  );
}

function waitingTitle(count: number): string {
  const things = count === 1 ? 'One thing is' : `${count} things are`;
  return `${things} kept on this device and not sent yet`;
}

function useItemWords(): ReadonlyMap<string, string> {
  const { day } = useWorkDay();
  return new Map(day.items.map(({ key, words }) => [key, words]));
}

function Listed({ kept }: Readonly<{ kept: readonly Kept[] }>) {
  const itemWords = useItemWords();
  return (
    <details>
      <summary>What it is</summary>
      <ul>
        {kept.map(({ entry }) => (
          <li key={entry.id}>{entryWords(entry, itemWords)}</li>
        ))}
      </ul>
    </details>
  );
}

function Refused({ kept }: Readonly<{ kept: Kept }>) {
  const { outbox } = useWorkDay();
  const itemWords = useItemWords();
  return (
    <Notice kind="refused" title={`Not taken in: ${entryWords(kept.entry, itemWords)}`}>
      <p>{kept.sentence}</p>
      <div className={css['acts']}>
        <Button variant="quiet" onClick={() => void outbox.again(kept)}>
          Send it again
        </Button>
        <Button variant="danger" onClick={() => void outbox.putAway(kept)}>
          Put it away
        </Button>
      </div>
    </Notice>
  );
}
