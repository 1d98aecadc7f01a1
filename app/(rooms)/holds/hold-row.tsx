import Link from 'next/link';
import { InstantText } from '@/app/ui/figures/day-text';
import type { HoldTold } from '@/lib/holds/reads/hold-list';
import { untilByDefault } from '@/lib/holds/rules';
import { called, prolong, release, toSlip } from './actions';
import css from './holds.module.css';
import { Phone } from './phone';
import { Touch } from './touch';
import { untilFields } from './until-fields';

type HoldRowProps = Readonly<{
  hold: HoldTold;
  zone: string;
  at: Date;
  holdHours: number;
  /** On the call list: with everything that one does after the call. */
  toCall?: boolean | undefined;
}>;

/** One hold in a list: what, for whom, until when, and what can be done by a touch. */
export function HoldRow({ hold, zone, at, holdHours, toCall }: HoldRowProps) {
  const { id, number, code, title, forWhom, phone } = hold;
  return (
    <li className={css['row']}>
      <div className={css['words']}>
        <span className={css['title']}>
          <Link href={`/stock/${code}`}>{title}</Link>
        </span>
        <span>
          for <span className={css['who']}>{forWhom}</span> <Phone number={phone} />
        </span>
        <Until hold={hold} zone={zone} />
        <HoldNotes hold={hold} zone={zone} />
        <Link href={`/holds/${number}`} className={css['phone']}>
          Hold {number}
        </Link>
      </div>
      <div className={css['touches']}>
        {toCall && hold.calledAt === null ? (
          <Touch action={called} fields={{ holdId: id }} label={`${forWhom} was called`}>
            Called
          </Touch>
        ) : null}
        {hold.untilAt === null ? null : (
          <Touch action={toSlip} fields={{ holdId: id }} label={`Sell ${title} to ${forWhom}`}>
            Put on a slip
          </Touch>
        )}
        {toCall ? (
          <>
            <Touch
              action={prolong}
              fields={{ holdId: id, ...untilFields(untilByDefault(at, holdHours), zone) }}
              label={`Hold ${title} longer for ${forWhom}`}
            >
              {holdHours} hours longer
            </Touch>
            <Touch action={release} fields={{ holdId: id }} label={`Let ${title} go`}>
              Let it go
            </Touch>
          </>
        ) : null}
      </div>
    </li>
  );
}

/** Until when, and how that stands. */
export function Until({ hold, zone }: Readonly<{ hold: HoldTold; zone: string }>) {
  const { untilAt, standing } = hold;
  if (hold.layawayNumber !== null) {
    return (
      <Link href={`/layaways/${hold.layawayNumber}`} className={css['phone']}>
        put away, layaway {hold.layawayNumber}
      </Link>
    );
  }
  if (hold.orderNumber !== null) {
    return (
      <Link href={`/orders/${hold.orderNumber}`} className={css['phone']}>
        for special order {hold.orderNumber}
      </Link>
    );
  }
  if (untilAt === null) return null;
  const look = standing === 'lapsed' ? css['late'] : standing === 'lapses_soon' ? css['due'] : '';
  return (
    <span className={look}>
      {standing === 'lapsed' ? 'was held until ' : 'until '}
      <InstantText at={untilAt} zone={zone} />
    </span>
  );
}

function HoldNotes({ hold, zone }: Readonly<{ hold: HoldTold; zone: string }>) {
  const { code, quantity, editionNumber, place, staffName, note, nextInLine, calledAt } = hold;
  const pieces = quantity > 1 ? `${quantity} of them` : null;
  const number = editionNumber === null ? null : `number ${editionNumber}`;
  const said = [code, pieces, number, place, `by ${staffName}`, note].filter(Boolean).join(' · ');
  return (
    <>
      <span className={css['quiet']}>{said}</span>
      {calledAt ? (
        <span>
          Called <InstantText at={calledAt} zone={zone} />
        </span>
      ) : null}
      {nextInLine ? <span>Second in line: {nextInLine}</span> : null}
    </>
  );
}
