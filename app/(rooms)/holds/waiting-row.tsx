import Link from 'next/link';
import { InstantText } from '@/app/ui/figures/day-text';
import type { WaitingTold } from '@/lib/holds/reads/waiting-list';
import { holdForNext, stopWaiting, tell } from './actions';
import css from './holds.module.css';
import { Phone } from './phone';
import { Touch } from './touch';

type WaitingRowProps = Readonly<{ waiting: WaitingTold; zone: string }>;

/** Somebody who waits for a piece: what can be said to them, and what is done by a touch. */
export function WaitingRow({ waiting, zone }: WaitingRowProps) {
  const { id, code, title, forWhom, phone, note, at, toldAt, standing } = waiting;
  const canHave = standing === 'free_now' || standing === 'told';
  return (
    <li className={css['row']}>
      <div className={css['words']}>
        <span className={css['title']}>
          <Link href={`/stock/${code}`}>{title}</Link>
        </span>
        <span>
          <span className={css['who']}>{forWhom}</span> <Phone number={phone} />
        </span>
        <span className={standing === 'free_now' ? css['due'] : ''}>{standingWords(waiting)}</span>
        <span className={css['quiet']}>
          {code} · asked <InstantText at={at} zone={zone} />
          {note === '' ? '' : ` · ${note}`}
        </span>
        {toldAt ? (
          <span>
            Told <InstantText at={toldAt} zone={zone} />
          </span>
        ) : null}
      </div>
      <div className={css['touches']}>
        {standing === 'free_now' ? (
          <Touch action={tell} fields={{ waitingId: id }} label={`${forWhom} was told`}>
            Told
          </Touch>
        ) : null}
        {canHave ? (
          <Touch
            action={holdForNext}
            fields={{ waitingId: id }}
            label={`Hold ${title} for ${forWhom}`}
            variant="main"
          >
            Hold it for them
          </Touch>
        ) : null}
        <Touch
          action={stopWaiting}
          fields={{ waitingId: id }}
          label={`${forWhom} waits no longer for ${title}`}
        >
          Waits no longer
        </Touch>
      </div>
    </li>
  );
}

function standingWords({ what, standing, onHand, held }: WaitingTold): string {
  const isSecond = what === 'second_in_line';
  switch (standing) {
    case 'free_now':
      return isSecond
        ? 'It is free now: call them.'
        : `It is back, ${onHand - held} free: tell them.`;
    case 'told':
      return 'It is here for them; they know.';
    case 'held_for_another':
      return isSecond ? 'Second in line: still held for another.' : 'Here, but held for another.';
    case 'gone':
      return isSecond ? 'Second in line, and it is sold: tell them.' : 'Not back yet.';
    case 'ended':
      return 'Waits no longer.';
  }
}
