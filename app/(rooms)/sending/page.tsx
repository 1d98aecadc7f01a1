import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { dayOf, formatDay, type Day } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import {
  listOpenClaims,
  listShipments,
  type ClaimListed,
  type ShipmentListed,
} from '@/lib/sending/reads/shipments';
import { claimStageWords } from '@/lib/sending/rules/claims';
import { leftWords, warnDays, type Asks } from '@/lib/sending/rules/limits';
import { howWords, stageWords } from '@/lib/sending/rules/words';
import { claimLimit } from './claim-limit';
import css from './sending.module.css';

export const metadata: Metadata = { title: 'Sending' };

/** What is to be packed, what is on the way, what came and is to be looked at, claims, and the rest. */
export default async function SendingPage() {
  const actor = await requireActor('sending.do');
  const gallery = await getGallery();
  const today = dayOf(now(), gallery.timeZone);
  const [shipments, claims] = await Promise.all([
    listShipments(actor, today),
    listOpenClaims(actor),
  ]);
  const asking = (asks: Asks) => shipments.filter((shipment) => shipment.asks === asks);
  return (
    <>
      <PageHead title="Sending" lead="What is packed, what is on its way, and what came.">
        <ButtonLink href="/sending/new" size="counter">
          Send something
        </ButtonLink>
      </PageHead>
      <InThisRoom room="diary" here="sending" roles={actor.roles} />
      {shipments.length === 0 ? (
        <Empty title="Nothing is sent yet" act={<ButtonLink href="/sending/new">Begin</ButtonLink>}>
          A shipment begins at a commission’s sheet, at the receipt of a sale that is sent, or here.
          Its boxes and crates are reckoned from the pieces, and changed by hand.
        </Empty>
      ) : null}
      <Shipments title="Came: look at it while it can be told" list={asking('look_at_it')} />
      <Claims claims={claims} today={today} />
      <Shipments title="To pack and send" list={asking('to_pack')} />
      <Shipments title="On the way" list={asking('on_the_way')} />
      <Shipments title="Done" list={asking('nothing')} />
    </>
  );
}

function Shipments({ title, list }: Readonly<{ title: string; list: readonly ShipmentListed[] }>) {
  if (list.length === 0) return null;
  return (
    <Section title={title}>
      <ul className={css['list']}>
        {list.map((shipment) => (
          <li key={shipment.number}>
            <Row shipment={shipment} />
          </li>
        ))}
      </ul>
    </Section>
  );
}

function Row({ shipment }: Readonly<{ shipment: ShipmentListed }>) {
  const { number, toName, what, how, carrier, boxes, stage, lastOn, asks, reportBy } = shipment;
  const presses = asks === 'look_at_it' && reportBy !== null && reportBy.daysLeft <= warnDays;
  const by = how === 'carrier' && carrier !== '' ? `by ${carrier}` : howWords[how];
  const boxWords = boxes === 0 ? 'no box yet' : `${boxes} ${boxes === 1 ? 'box' : 'boxes'}`;
  const since = lastOn === null ? '' : ` ${formatDay(lastOn, 'short')}`;
  return (
    <Link
      href={`/sending/${number}`}
      className={css['row']}
      data-presses={presses ? true : undefined}
    >
      <span>
        <strong>
          {number}, to {toName}
        </strong>
        <span className={css['quiet']}>{[what, by, boxWords].filter(Boolean).join(' · ')}</span>
      </span>
      <span>
        {asks === 'look_at_it' && reportBy
          ? `tell of damage by ${formatDay(reportBy.byOn, 'short')}, ${leftWords(reportBy)}`
          : `${stageWords[stage]}${since}`}
      </span>
    </Link>
  );
}

type ClaimsProps = Readonly<{ claims: readonly ClaimListed[]; today: Day }>;

function Claims({ claims, today }: ClaimsProps) {
  if (claims.length === 0) return null;
  return (
    <Section title="Claims">
      <ul className={css['list']}>
        {claims.map((claim) => {
          const limit = claimLimit(claim, today);
          return (
            <li key={claim.number}>
              <Link
                href={`/sending/${claim.shipmentNumber}/claim/${claim.number}`}
                className={css['row']}
                data-presses={limit && limit.daysLeft <= warnDays ? true : undefined}
              >
                <span>
                  <strong>
                    Claim {claim.number}, {claim.toName}
                  </strong>
                  <span className={css['quiet']}>
                    shipment {claim.shipmentNumber} · {claimStageWords[claim.stage]}
                  </span>
                </span>
                <span>
                  {limit
                    ? `by ${formatDay(limit.byOn, 'short')}, ${leftWords(limit)}`
                    : `found ${formatDay(claim.foundOn, 'short')}`}
                </span>
              </Link>
            </li>
          );
        })}
      </ul>
    </Section>
  );
}
