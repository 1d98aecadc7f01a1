import { notFound } from 'next/navigation';
import { z } from 'zod';
import { ButtonLink } from '@/app/ui/button/button';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, dayOf } from '@/lib/dates/rules';
import { findPlan, type PlanShown } from '@/lib/installation/reads/plan/told';
import {
  findWorkOrder,
  mayGiveOwnersWord,
  type WorkOrder,
} from '@/lib/installation/reads/work/order';
import { dayToldWords } from '@/lib/installation/rules/diary/weeks';
import { hoursWords, titleWords } from '@/lib/installation/rules/diary/words';
import { now } from '@/lib/platform/clock';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import type { LengthSystem } from '@/lib/units/rules';
import { PlanTold } from '@/app/(rooms)/commissions/[number]/wall/plan/plan-told';
import type { DayShown } from './day-shown';
import { DoorCodes } from './door-codes';
import { OrderFacts } from './order-facts';
import { Signed } from './signed';
import { WorkDay } from './work-day';

export const metadata = { title: 'Work order' };

type WorkPageProps = Readonly<{ params: Promise<{ id: string }> }>;

/** The day of an appointment on one page, to be ticked off on a telephone, with a line or without. */
export default async function WorkPage({ params }: WorkPageProps) {
  const actor = await requireActor('installation.do');
  const id = z.uuid().safeParse((await params).id);
  if (!id.success) notFound();
  const gallery = await getGallery();
  const zone = gallery.timeZone;
  const today = dayOf(now(), zone);
  const order = await findWorkOrder(actor, id.data, { gallery, today });
  if (!order) notFound();
  const { kind, commission, address, startsOn } = order;
  const plan = await planOf(order, actor, gallery);
  return (
    <>
      <PageHead
        title={titleWords(kind, commission?.title ?? null, address)}
        lead={`Work order. ${dayToldWords(startsOn, today)}, ${hoursWords(order, zone)}.`}
        back={{ href: `/diary/${order.id}`, name: 'Appointment' }}
      >
        <ButtonLink href={`/diary/${order.id}/work/pdf`} variant="quiet">
          On paper
        </ButtonLink>
      </PageHead>
      <HowItStands order={order} actor={actor} zone={zone} />
      <OrderFacts order={order} gallery={gallery} plan={plan} />
      {order.signed ? null : <DoorCodes id={order.id} codes={order.codes} />}
      <HowItHangs order={order} shown={plan} unit={gallery.lengthUnit} />
      <WorkDay key={order.signed ? 'signed' : 'open'} day={shownOf(order, actor, gallery)} />
    </>
  );
}

type HowItStandsProps = Readonly<{ order: WorkOrder; actor: Actor; zone: string }>;

/** What became of the day: called off, or signed. */
function HowItStands({ order, actor, zone }: HowItStandsProps) {
  if (order.calledOffWhy !== null) {
    return (
      <Notice kind="refused" title="Called off">
        {order.calledOffWhy}
      </Notice>
    );
  }
  return order.signed ? <Signed order={order} roles={actor.roles} zone={zone} /> : null;
}

/** How the piece hangs; null for what is not hung, and where nobody planned it. */
async function planOf(order: WorkOrder, actor: Actor, gallery: Gallery) {
  const { kind, commission } = order;
  if (kind !== 'hanging' || !commission) return null;
  return findPlan(actor, commission.id, gallery.lengthUnit);
}

type HowItHangsProps = Readonly<{
  order: WorkOrder;
  shown: PlanShown | null;
  unit: LengthSystem;
}>;

/** The plan of the fixings, drawn and in figures, so that it is there without a line. */
function HowItHangs({ order, shown, unit }: HowItHangsProps) {
  const { kind, commission, signed } = order;
  if (kind !== 'hanging' || !commission || signed) return null;
  const href = `/commissions/${commission.number}/wall/plan`;
  return (
    <Section
      title="How it hangs"
      id="plan"
      act={
        <ButtonLink href={shown?.plan ? `${href}/pdf` : href} variant="quiet">
          {shown?.plan ? 'The installer’s sheet' : 'Plan it'}
        </ButtonLink>
      }
    >
      {shown?.plan ? (
        <PlanTold shown={shown} plan={shown.plan} unit={unit} />
      ) : (
        <Notice kind="caution" title="There is no plan of the fixings that holds">
          {shown?.why.join(' ') ??
            'Nobody has worked out yet what holds it. Do not hang it on a guess: local codes and a licensed contractor decide.'}
        </Notice>
      )}
    </Section>
  );
}

function shownOf(order: WorkOrder, actor: Actor, gallery: Gallery): DayShown {
  const { id, kind, items, plan, handOverFacts, maySign, needsOwner, staff, ticks } = order;
  const { isWeighed, hasFixingsPicture, hasPictureInPlace, facts } = order;
  return {
    ...{ id, kind, items, plan, handOverFacts, maySign, needsOwner, staff, ticks },
    ...{ isWeighed, hasFixingsPicture, hasPictureInPlace, weightG: facts.weightG },
    snags: order.snags
      .filter(({ isMended }) => !isMended)
      .map((snag) => ({ ...snag, mendByOn: dayFromDate(snag.mendByOn) })),
    me: { id: actor.id, name: actor.name },
    givesWord: mayGiveOwnersWord(actor),
    zone: gallery.timeZone,
    system: gallery.lengthUnit,
    phone: gallery.phone,
    isSigned: order.signed !== null,
    isCalledOff: order.isCalledOff,
  };
}
