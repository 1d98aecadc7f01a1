import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Caution } from '@/app/ui/page/caution';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import { reckonShipment, sendingCautions, wayCautions } from '@/lib/sending/rules/reckoning';
import { isOpen } from '@/lib/sending/rules/way';
import { stageWords } from '@/lib/sending/rules/words';
import { readShipmentOf, shipmentName, type ShipmentAddress } from '../read-shipment';
import css from '../sending.module.css';
import { Boxes } from './boxes';
import { Events } from './events';
import { Looks } from './looks';
import { Reckoned } from './reckoned';
import { WhereFacts } from './where-facts';

export async function generateMetadata({ params }: ShipmentAddress) {
  return { title: `Shipment ${(await params).number}` };
}

/** A shipment on one sheet: where to, its boxes, what it comes to, what became of it, its papers. */
export default async function ShipmentPage({ params }: ShipmentAddress) {
  const actor = await requireActor('sending.do');
  const [shipment, gallery] = await Promise.all([readShipmentOf(actor, params), getGallery()]);
  const today = dayOf(now(), gallery.timeZone);
  const reckoning = reckonShipment(shipment.boxes, shipment.terms, today);
  const open = isOpen(shipment.events);
  const { boxes, opening, terms } = shipment;
  const cautions = open
    ? [
        ...sendingCautions({ ...shipment, reckoning }, terms),
        ...(opening ? wayCautions(boxes, opening, gallery.lengthUnit) : []),
      ]
    : [];
  return (
    <>
      <PageHead
        title={shipmentName(shipment)}
        back={{ href: '/sending', name: 'Sending' }}
        lead={`To ${shipment.toName}: ${stageWords[shipment.stage]}.`}
      >
        <NextActs shipment={shipment} />
      </PageHead>
      <ForWhat shipment={shipment} />
      <div className={css['cautions']}>
        {cautions.map((words) => (
          <Caution key={words}>{words}</Caution>
        ))}
      </div>
      <WhereFacts shipment={shipment} open={open} today={today} />
      <Boxes {...{ shipment, open, reckoning }} unit={gallery.lengthUnit} />
      <Reckoned {...{ shipment, reckoning }} unit={gallery.lengthUnit} />
      <Papers shipment={shipment} />
      <Looks shipment={shipment} today={today} />
      <Events shipment={shipment} />
    </>
  );
}

function ForWhat({ shipment: { forWhat } }: Readonly<{ shipment: ShipmentTold }>) {
  const { commission, sale } = forWhat;
  if (commission) {
    return (
      <p>
        For the commission{' '}
        <Link href={`/commissions/${commission.number}`}>
          <cite>{commission.title}</cite>
        </Link>
      </p>
    );
  }
  if (!sale) return null;
  return (
    <p>
      For <Link href={`/receipts/${sale.number}`}>receipt {sale.number}</Link>
    </p>
  );
}

function NextActs({ shipment }: Readonly<{ shipment: ShipmentTold }>) {
  const { number, stage, how, boxes } = shipment;
  const step = (kind: string, name: string, isMain: boolean) => (
    <ButtonLink
      key={kind}
      href={`/sending/${number}/step/${kind}`}
      size="counter"
      variant={isMain ? 'main' : 'quiet'}
    >
      {name}
    </ButtonLink>
  );
  const leaves = how === 'fetched' ? 'fetched' : 'sent';
  const leavesName = how === 'fetched' ? 'It is fetched' : 'It left';
  if (boxes.length === 0 && stage === 'to_pack') {
    return (
      <ButtonLink href={`/sending/${number}/pack`} size="counter">
        What goes into it
      </ButtonLink>
    );
  }
  if (stage === 'to_pack')
    return [step('packed', 'It is packed', true), step(leaves, leavesName, false)];
  if (stage === 'packed') return step(leaves, leavesName, true);
  return stage === 'on_the_way' ? step('arrived', 'It arrived', true) : null;
}

function Papers({ shipment }: Readonly<{ shipment: ShipmentTold }>) {
  const { number, boxes, how } = shipment;
  if (boxes.length === 0) return null;
  const papers = [
    ['packing', 'Packing list'],
    ['labels', 'Labels for the boxes'],
    ...(how === 'fetched' ? [] : [['receiving', 'Slip for whoever receives it']]),
  ];
  return (
    <Section title="Papers" lead="A value stands on none of them.">
      <p className={css['acts']}>
        {papers.map(([paper, name]) => (
          <ButtonLink key={paper} href={`/sending/${number}/${paper}/pdf`} variant="quiet" download>
            {name}
          </ButtonLink>
        ))}
      </p>
    </Section>
  );
}
