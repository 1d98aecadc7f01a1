import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { z } from 'zod';
import { InstantText } from '@/app/ui/figures/day-text';
import { Caution } from '@/app/ui/page/caution';
import { Facts } from '@/app/ui/page/facts';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { findAppointment, listLeads, type AppointmentTold } from '@/lib/installation/reads';
import { readWeightFor } from '@/lib/installation/reads/diary/before-booking';
import { bringsThePiece } from '@/lib/installation/rules';
import { enoughHands } from '@/lib/installation/rules/crew/enough';
import { twiceWords } from '@/lib/installation/rules/diary/when';
import { dayToldWords } from '@/lib/installation/rules/diary/weeks';
import {
  bookedWords,
  hoursWords,
  movedWords,
  titleWords,
} from '@/lib/installation/rules/diary/words';
import { now } from '@/lib/platform/clock';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import { cautionFor } from '../cautions';
import { ChangeIt, TellMore } from './change-it';
import { factsOf } from './facts-of';
import { StoodBefore } from './stood-before';
import { ItsPapers } from './its-papers';
import css from '../diary.module.css';

export const metadata: Metadata = { title: 'Appointment' };

type AppointmentPageProps = Readonly<{
  params: Promise<{ id: string }>;
  searchParams: Promise<{ done?: string | string[] }>;
}>;

/** One appointment: when, where, who goes, for what; moving it and calling it off. */
export default async function AppointmentPage({ params, searchParams }: AppointmentPageProps) {
  const actor = await requireActor('diary.see');
  const id = z.uuid().safeParse((await params).id);
  const gallery = await getGallery();
  const zone = gallery.timeZone;
  const appointment = id.success ? await findAppointment(actor, id.data, zone) : null;
  if (!appointment) notFound();
  const at = now();
  const stands = appointment.calledOffAt === null && appointment.endsAt > at;
  const mayChange = stands && isAllowed(actor.roles, 'diary.book');
  const { kind, commission, address } = appointment;
  return (
    <>
      <PageHead
        title={titleWords(kind, commission?.title ?? null, address)}
        back={{ href: `/diary?day=${appointment.startsOn}`, name: 'Diary' }}
        lead={
          <>
            {dayToldWords(appointment.startsOn, dayOf(at, zone))}, {hoursWords(appointment, zone)}.
          </>
        }
      />
      <div className={css['told']}>
        <Said appointment={appointment} zone={zone} done={(await searchParams).done} />
      </div>
      <ItsPapers appointment={appointment} />
      <Columns
        wide={
          <>
            <Facts facts={factsOf(appointment, zone)} />
            {stands ? <ToMind appointment={appointment} gallery={gallery} /> : null}
            <StoodBefore appointment={appointment} zone={zone} />
            {mayChange ? <TellMore appointment={appointment} /> : null}
          </>
        }
        beside={
          mayChange ? (
            <ChangeIt appointment={appointment} leads={await listLeads(actor)} zone={zone} />
          ) : null
        }
      />
    </>
  );
}

type ToMindProps = Readonly<{ appointment: AppointmentTold; gallery: Gallery }>;

/** What to mind: hours that the clocks show twice, the weight, and what the kind asks for. */
async function ToMind({ appointment, gallery }: ToMindProps) {
  const { kind, commission, others } = appointment;
  const weight = commission && bringsThePiece(kind) ? await readWeightFor(commission.id) : null;
  const hands = enoughHands(weight, others.length + 1, gallery.lengthUnit === 'in' ? 'lb' : 'kg');
  const twice = twiceWords(appointment, gallery.timeZone);
  return (
    <>
      {twice ? <Caution>{twice}</Caution> : null}
      {hands ? <Caution>{hands}</Caution> : null}
      <Caution>{cautionFor[kind]}</Caution>
    </>
  );
}

type SaidProps = Readonly<{
  appointment: AppointmentTold;
  zone: string;
  done: string | string[] | undefined;
}>;

function Said({ appointment, zone, done }: SaidProps) {
  const { kind, calledOffAt, calledOffWhy } = appointment;
  if (calledOffAt) {
    return (
      <Notice kind="refused" title="Called off">
        {calledOffWhy}. <InstantText at={calledOffAt} zone={zone} />
      </Notice>
    );
  }
  if (done === 'booked') return <Notice kind="done">{bookedWords(kind, appointment, zone)}</Notice>;
  if (done === 'moved') return <Notice kind="done">{movedWords(kind, appointment, zone)}</Notice>;
  return done === 'told' ? <Notice kind="done">It is kept.</Notice> : null;
}
