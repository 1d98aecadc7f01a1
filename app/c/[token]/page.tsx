import { ButtonLink } from '@/app/ui/button/button';
import { Band } from '@/app/ui/figures/band';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { headForCollector } from '@/lib/commissions/reads/page/head';
import { dayOf, formatDay } from '@/lib/dates/rules';
import { openPage, type TokenParams } from '../open-page';
import { ReachGallery } from '../parts/reach-gallery';
import { readDecisions } from './decisions';
import { TheirChosen } from './their-chosen';
import { TheirCalendar } from './their-calendar';
import { TheirDays } from './their-days';
import { TheirMoney } from './their-money';
import { TheirPapers } from './their-papers';
import { TheirProgress } from './their-progress';
import css from '../page.module.css';

type TheirPageProps = Readonly<{
  params: TokenParams;
  searchParams: Promise<{ done?: string | string[] }>;
}>;

export async function generateMetadata({ params }: TheirPageProps) {
  const { link } = await openPage(params);
  return { title: link.title };
}

const doneWords: Readonly<Record<string, string>> = {
  day: 'Your day is booked. It stands below, and in our diary.',
  signed: 'Your signature is kept, under exactly those words.',
  yes: 'Your yes is kept, bound to exactly that picture.',
  changes: 'What should be otherwise is with the studio.',
};

/** The collector's own page: where the piece is, and what they are to decide, largest first. */
export default async function TheirPage({ params, searchParams }: TheirPageProps) {
  const page = await openPage(params);
  const { link, gallery, token } = page;
  const today = dayOf(page.at, gallery.timeZone);
  const [head, decisions] = await Promise.all([
    headForCollector(link.commissionId, { zone: gallery.timeZone, today }),
    readDecisions(page),
  ]);
  const done = doneWords[String((await searchParams).done)];
  const promised = head.promisedOn && !head.isOver ? formatDay(head.promisedOn, 'long') : null;
  const told = head.toldOn ? formatDay(head.toldOn, 'long') : undefined;
  return (
    <>
      <PageHead title={link.title} work lead={`${gallery.name}, for ${link.forName}`} />
      {done ? <Notice kind="done">{done}</Notice> : null}
      <p>
        <strong>{head.sentence}</strong>
      </p>
      {decisions.length > 0 ? (
        <Section title={decisions.length === 1 ? 'Yours to decide' : 'Yours to decide, in turn'}>
          <ul className={css['decide']}>
            {decisions.map(({ to, title, words, act }) => (
              <li key={to}>
                <h3>{title}</h3>
                <p>{words}</p>
                <ButtonLink href={`/c/${token}/${to}`}>{act}</ButtonLink>
              </li>
            ))}
          </ul>
        </Section>
      ) : null}
      <Section title="The way it goes">
        <Band
          label="From the agreement to your wall"
          pegs={head.pegs}
          promised={promised ? { when: promised, told } : undefined}
        />
      </Section>
      <TheirProgress page={page} />
      <TheirChosen page={page} />
      <TheirDays page={page} />
      <TheirCalendar page={page} />
      <TheirMoney page={page} />
      <TheirPapers page={page} />
      <ReachGallery gallery={gallery} />
    </>
  );
}
