import type { Metadata } from 'next';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { KeptSomewhere } from '@/app/(rooms)/diary/[id]/work/kept/kept-somewhere';
import { now } from '@/lib/platform/clock';
import { OnTheBench } from './today/on-the-bench';
import { getToday, isQuiet } from './today/gathered';
import { InTheDiary } from './today/in-the-diary';
import { NoneLeft } from './today/none-left';
import { TakenToday } from './today/taken-today';
import { summaryOf } from './today/summary';
import { SeeTo } from './today/to-see-to';
import { Waiting } from './today/waiting';

export const metadata: Metadata = { title: 'Today' };

/** The first page of the day: what needs a person now, by what this person does here. */
export default async function TodayPage() {
  const actor = await requireActor('workings.see');
  const today = await getToday(actor, now());
  const { zone, todayOn } = today;
  const isToday = today.diary?.some((one) => one.startsOn === todayOn) ?? false;
  const seeTo = <SeeTo lines={today.toSeeTo} />;
  const diary = <InTheDiary appointments={today.diary ?? []} zone={zone} todayOn={todayOn} />;
  return (
    <>
      <PageHead title={today.title} lead={summaryOf(today)} />
      <KeptSomewhere />
      {today.taken ? <TakenToday taken={today.taken} /> : null}
      {today.sells ? seeTo : null}
      {isToday ? diary : null}
      {today.waiting.map((group, place) => (
        <Waiting key={group.on} group={group} size={place === 0 ? 'large' : 'small'} />
      ))}
      {today.sells ? null : seeTo}
      {isToday ? null : diary}
      {today.tooLong ? <OnTheBench standing={today.tooLong} /> : null}
      <NoneLeft pieces={today.noneLeft} mayMake={today.mayMake} />
      {isQuiet(today) ? (
        <Section title="All quiet">
          <Empty title="Nothing needs anybody just now">
            Commissions that wait on somebody, the day’s appointments, pieces that stand too long at
            a step, and what has sold out hang here by themselves, the longest waiting first.
          </Empty>
        </Section>
      ) : null}
    </>
  );
}
