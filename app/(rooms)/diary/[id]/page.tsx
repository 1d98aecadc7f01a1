import type { Metadata } from 'next';
import Link from 'next/link';
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
import { dayToldWords } from '@/lib/installation/rules/diary/weeks';
import {
  bookedWords,
  hoursWords,
  movedWords,
  titleWords,
} from '@/lib/installation/rules/diary/words';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { cautionFor } from '../cautions';
import { ChangeIt } from './change-it';
import css from '../diary.module.css';

export const metadata: Metadata = { title: 'Appointment' };

type AppointmentPageProps = Readonly<{
  params: Promise<{ id: string }>;
  searchParams: Promise<{ done?: string | string[] }>;
}>;

/** One appointment: when, where, who leads, for what; moving it and calling it off. */
export default async function AppointmentPage({ params, searchParams }: AppointmentPageProps) {
  const actor = await requireActor('diary.see');
  const id = z.uuid().safeParse((await params).id);
  const { timeZone } = await getGallery();
  const appointment = id.success ? await findAppointment(actor, id.data, timeZone) : null;
  if (!appointment) notFound();
  const at = now();
  const stands = appointment.calledOffAt === null && appointment.endsAt > at;
  const mayChange = stands && isAllowed(actor.roles, 'diary.book');
  const { kind, commission, address } = appointment;
  return (
    <>
      <PageHead
        title={titleWords(kind, commission?.title ?? null, address)}
        back={{ href: '/diary', name: 'Diary' }}
        lead={
          <>
            {dayToldWords(appointment.startsOn, dayOf(at, timeZone))},{' '}
            {hoursWords(appointment, timeZone)}.
          </>
        }
      />
      <div className={css['told']}>
        <Said appointment={appointment} zone={timeZone} done={(await searchParams).done} />
      </div>
      <Columns
        wide={
          <>
            <Facts facts={factsOf(appointment, timeZone)} />
            {stands ? <Caution>{cautionFor[kind]}</Caution> : null}
          </>
        }
        beside={
          mayChange ? (
            <ChangeIt appointment={appointment} leads={await listLeads(actor)} zone={timeZone} />
          ) : null
        }
      />
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
  return null;
}

function factsOf(appointment: AppointmentTold, zone: string) {
  const { commission, address, leadName, note, bookedBy, bookedAt, sequence } = appointment;
  const phone = appointment.collectorPhone;
  return [
    { name: 'Where', value: address },
    { name: 'Who leads it', value: leadName },
    {
      name: 'For',
      value: commission ? (
        <>
          <Link href={`/commissions/${commission.number}`}>
            Commission {commission.number}, <cite>{commission.title}</cite>
          </Link>
          , {commission.collector}
          {phone ? (
            <>
              {', '}
              <a href={`tel:${phone.replace(/[^+\d]/g, '')}`}>{phone}</a>
            </>
          ) : null}
        </>
      ) : (
        'no commission'
      ),
    },
    { name: 'What to know', value: note === '' ? null : note, notKnown: 'nothing noted' },
    {
      name: 'Booked by',
      value: (
        <>
          {bookedBy}, <InstantText at={bookedAt} zone={zone} />
          {sequence > 0 ? `; changed ${sequence === 1 ? 'once' : `${sequence} times`} since` : ''}
        </>
      ),
    },
  ];
}
