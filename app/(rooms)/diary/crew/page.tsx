import type { Metadata } from 'next';
import Link from 'next/link';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Table } from '@/app/ui/figures/table';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import {
  listCrew,
  listWays,
  type CrewMember,
  type WayKept,
} from '@/lib/installation/reads/crew/people';
import { lastsWords } from '@/lib/installation/rules/crew/hours';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { keepTheWay } from './actions';
import { awayWords, weekWords } from './week-words';
import css from '../diary.module.css';

export const metadata: Metadata = { title: 'Who works when' };

/** Everyone who works here: their hours, and when they are away; and the ways between places. */
export default async function CrewPage() {
  const actor = await requireActor('diary.see');
  const { timeZone: zone } = await getGallery();
  const how = { todayOn: dayOf(now(), zone), zone };
  const [crew, ways] = await Promise.all([listCrew(actor, how), listWays(actor)]);
  return (
    <>
      <PageHead
        title="Who works when"
        lead="Whoever has no hours of their own works as the gallery is open: Monday to Saturday, nine to five."
      />
      <InThisRoom room="diary" here="crew" roles={actor.roles} />
      <Table
        caption="Everyone who works here"
        captionHeardOnly
        columns={[{ name: 'Who' }, { name: 'Works' }, { name: 'Away' }]}
        rows={crew.map(rowOf)}
      />
      <Ways ways={ways} mayKeep={isAllowed(actor.roles, 'diary.book')} />
    </>
  );
}

function rowOf(member: CrewMember) {
  const away = member.absences.map(awayWords).join('; ');
  return {
    key: member.id,
    cells: [
      <Link key="who" href={`/diary/crew/${member.id}`}>
        {member.name}
      </Link>,
      weekWords(member.workDays),
      away === '' ? 'not away' : away,
    ],
  };
}

/** A place as it is compared, in small letters, with its words begun large. */
function PlaceText({ place }: Readonly<{ place: string }>) {
  return <span className={css['place']}>{place}</span>;
}

function Ways({ ways, mayKeep }: Readonly<{ ways: readonly WayKept[]; mayKeep: boolean }>) {
  return (
    <Section
      title="Ways between places"
      lead="Where nothing is kept, the way from one place to the next is reckoned by the gallery."
    >
      {ways.length > 0 ? (
        <Table
          caption="Ways that are kept"
          captionHeardOnly
          columns={[{ name: 'From' }, { name: 'To' }, { name: 'Takes', figure: true }]}
          rows={ways.map(({ fromPlace, toPlace, minutes }) => ({
            key: `${fromPlace}\n${toPlace}`,
            cells: [
              <PlaceText key="from" place={fromPlace} />,
              <PlaceText key="to" place={toPlace} />,
              lastsWords(minutes),
            ],
          }))}
        />
      ) : null}
      {mayKeep ? (
        <FormFrame action={keepTheWay} label="Keep a way" layout="row">
          <RequestKey />
          <Field name="from" label="From" maxLength={200} required />
          <Field name="to" label="To" maxLength={200} required />
          <Field name="minutes" label="Takes" kind="count" unit="min" width="short" required />
          <SubmitButton variant="quiet">Keep the way</SubmitButton>
        </FormFrame>
      ) : null}
    </Section>
  );
}
