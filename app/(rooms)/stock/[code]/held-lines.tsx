import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Section } from '@/app/ui/page/section';
import { StillHereRow } from '@/app/(rooms)/holds/still-here';
import { HoldRow } from '@/app/(rooms)/holds/hold-row';
import css from '@/app/(rooms)/holds/holds.module.css';
import { WaitingRow } from '@/app/(rooms)/holds/waiting-row';
import { isAllowed, type Actor } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { listHoldsOf } from '@/lib/holds/reads/hold-list';
import { listStillHereOf } from '@/lib/holds/reads/still-here';
import { listWaitingFor } from '@/lib/holds/reads/waiting-list';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';

type HeldLinesProps = Readonly<{ actor: Actor; piece: Readonly<{ id: string; code: string }> }>;

/** What is kept back of a piece, who waits for it, and what of it is sold and still here. */
export async function HeldLines({ actor, piece }: HeldLinesProps) {
  const at = now();
  const [{ timeZone: zone, holdHours }, holds, waiting, stillHere] = await Promise.all([
    getGallery(),
    listHoldsOf(actor, piece.id, at),
    listWaitingFor(actor, piece.id),
    listStillHereOf(actor, piece.id),
  ]);
  const mayHold = isAllowed(actor.roles, 'stock.hold');
  const isAny = holds.length + waiting.length + stillHere.length > 0;
  if (!isAny && !mayHold) return null;
  return (
    <Section title="Held, waited for, still here" id="held">
      {isAny && mayHold ? (
        <ul className={css['rows']}>
          {holds.map((hold) => (
            <HoldRow key={hold.id} {...{ hold, zone, at, holdHours }} />
          ))}
          {waiting.map((each) => (
            <WaitingRow key={each.id} waiting={each} zone={zone} />
          ))}
          {stillHere.map((each) => (
            <StillHereRow key={each.saleLineId} piece={each} todayOn={dayOf(at, zone)} />
          ))}
        </ul>
      ) : null}
      {isAny && !mayHold ? (
        <ul className={css['rows']}>
          {holds.map((hold) => (
            <li key={hold.id}>held for {hold.forWhom}</li>
          ))}
          {waiting.map((each) => (
            <li key={each.id}>{each.forWhom} waits for it</li>
          ))}
          {stillHere.map((each) => (
            <li key={each.saleLineId}>sold, still here</li>
          ))}
        </ul>
      ) : null}
      {mayHold ? <Offer code={piece.code} /> : null}
    </Section>
  );
}

function Offer({ code }: Readonly<{ code: string }>) {
  return (
    <p className={css['offers']}>
      <ButtonLink href={`/holds/new?pieces=${code}`} variant="quiet" size="counter">
        Hold it, or tell somebody when it is back
      </ButtonLink>
      <Link href={`/layaways/new?pieces=${code}`} className={css['phone']}>
        Put it away and pay it off
      </Link>
      <Link href={`/on-approval/new?pieces=${code}`} className={css['phone']}>
        Take it home to try
      </Link>
    </p>
  );
}
