import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Facts } from '@/app/ui/page/facts';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { Picture } from '@/app/ui/piece/picture';
import { requireActor } from '@/lib/access/reads';
import { dayOf, type Day } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import type { ClaimTold } from '@/lib/sending/reads/told';
import { claimFile } from '@/lib/sending/rules/claim-file';
import { claimEventWords, claimStageWords } from '@/lib/sending/rules/claims';
import { leftWords, warnDays } from '@/lib/sending/rules/limits';
import { claimLimit } from '../../../claim-limit';
import { readShipmentOf, shipmentName, type ShipmentAddress } from '../../../read-shipment';
import css from '../../../sending.module.css';
import { ClaimForm } from './claim-form';

export const metadata: Metadata = { title: 'A claim' };

/** A claim: what is broken, by when it must be told and claimed, what came of it, and its file. */
export default async function ClaimPage({ params }: ShipmentAddress<{ claimNumber: string }>) {
  const actor = await requireActor('sending.do');
  const [shipment, gallery] = await Promise.all([readShipmentOf(actor, params), getGallery()]);
  const { claimNumber } = await params;
  const claim = shipment.claims.find(({ number }) => String(number) === claimNumber);
  if (!claim) notFound();
  const today = dayOf(now(), gallery.timeZone);
  const here = `/sending/${shipment.number}/claim/${claim.number}`;
  return (
    <>
      <PageHead
        title={`Claim ${claim.number}`}
        back={{ href: `/sending/${shipment.number}`, name: shipmentName(shipment) }}
        lead={`${capital(claimStageWords[claim.stage])}.`}
      >
        <ButtonLink href={`${here}/pdf`} download size="counter">
          Cover of its file as PDF
        </ButtonLink>
      </PageHead>
      <LimitNotice claim={claim} today={today} />
      <ClaimFacts claim={claim} />
      <FileOf shipment={shipment} claim={claim} />
      <CameOfIt claim={claim} />
      <ClaimForm claim={claim} today={today} />
    </>
  );
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

function LimitNotice({ claim, today }: Readonly<{ claim: ClaimTold; today: Day }>) {
  const limit = claimLimit(claim, today);
  if (!limit || limit.daysLeft > warnDays) return null;
  return (
    <Notice kind="caution" title={claim.stage === 'to_tell' ? 'Tell the carrier' : 'Claim it'}>
      By <DayText day={limit.byOn} style="long" />: {leftWords(limit)}.
    </Notice>
  );
}

function ClaimFacts({ claim }: Readonly<{ claim: ClaimTold }>) {
  return (
    <>
      <Facts
        facts={[
          { name: 'Found on', value: <DayText day={claim.foundOn} /> },
          { name: 'Asked for it', value: <Money cents={claim.askedCents} /> },
          { name: 'To be told by', value: <DayText day={claim.reportByOn} /> },
          { name: 'To be claimed by', value: <DayText day={claim.claimByOn} /> },
          { name: 'Written down by', value: claim.by },
        ]}
      />
      <p className={css['words']}>{claim.words}</p>
      <div className={css['views']}>
        {claim.pictures.map(({ fileId, width, height }, at) => (
          <Picture
            key={fileId}
            src={`/files/${fileId}`}
            alt={`The damage, picture ${at + 1}`}
            {...{ width, height }}
          />
        ))}
      </div>
    </>
  );
}

type FileOfProps = Readonly<{ shipment: ShipmentTold; claim: ClaimTold }>;

function FileOf({ shipment, claim }: FileOfProps) {
  return (
    <Section title="What belongs to its file" lead="Claims are refused for want of these.">
      <ul className={css['events']}>
        {claimFile(shipment, claim).map(({ words, isThere }) => (
          <li key={words}>
            {words}: {isThere ? 'there' : <strong>missing</strong>}
          </li>
        ))}
      </ul>
    </Section>
  );
}

function CameOfIt({ claim }: Readonly<{ claim: ClaimTold }>) {
  if (claim.events.length === 0) return null;
  return (
    <Section title="What came of it">
      <ol className={css['events']}>
        {claim.events.map((event, at) => (
          <li key={at}>
            <DayText day={event.on} />, {event.by}: {claimEventWords[event.kind]}
            {event.amountCents > 0n ? (
              <>
                , <Money cents={event.amountCents} />
              </>
            ) : null}
            {event.words === '' ? null : <span className={css['said']}>. {event.words}</span>}
          </li>
        ))}
      </ol>
    </Section>
  );
}
