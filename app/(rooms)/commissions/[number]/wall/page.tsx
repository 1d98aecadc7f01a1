import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Notice } from '@/app/ui/page/notice';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { findSurvey, listLooked, type SurveyLooked } from '@/lib/installation/reads/survey/told';
import { surveyCautions } from '@/lib/installation/rules/survey/cautions';
import { stillToLook } from '@/lib/installation/rules/survey/questions';
import { ActPage } from '../act-page';
import { readSheet, type SheetParams } from '../read-sheet';
import { LookAtIt } from './look-at-it';
import { SurveyFacts } from './survey-facts';
import css from '../../commissions.module.css';

export const metadata = { title: 'The wall' };

type WallPageProps = Readonly<{
  params: SheetParams;
  searchParams: Promise<{ kept?: string | string[] }>;
}>;

/** The wall on which a commission will hang: as it was looked at, and what is still to be asked. */
export default async function WallPage({ params, searchParams }: WallPageProps) {
  const actor = await requireActor('commissions.see');
  const sheet = await readSheet(actor, params);
  const [survey, looked, { kept }] = await Promise.all([
    findSurvey(actor, sheet.id),
    listLooked(actor, sheet.id),
    searchParams,
  ]);
  const unit = sheet.gallery.lengthUnit;
  const open = survey ? stillToLook(survey) : [];
  const mayLook = isAllowed(actor.roles, 'installation.do') && sheet.ending === null;
  return (
    <ActPage
      sheet={sheet}
      title="The wall"
      lead={
        survey
          ? 'As somebody looked at it. Each time is kept whole; the last one counts.'
          : 'Nobody has looked at it yet. No day for a hanging is booked before somebody knows what it is made of.'
      }
    >
      {kept === undefined ? null : <Notice kind="done">The wall is written down.</Notice>}
      {survey ? (
        <Section
          title={`As it was looked at, ${survey.version === 1 ? 'once' : `${survey.version} times`}`}
          act={
            <ButtonLink href={`/commissions/${sheet.number}/wall/plan`}>How it hangs</ButtonLink>
          }
        >
          {open.length > 0 ? (
            <Notice kind="caution" title="Still to look at">
              {`${open.join('; ')}.`}
            </Notice>
          ) : null}
          <SurveyFacts
            survey={survey}
            unit={unit}
            cautions={surveyCautions(survey, sheet.request, unit)}
          />
        </Section>
      ) : null}
      {mayLook ? (
        <Section
          title={survey ? 'Look at it again' : 'Look at it'}
          id="look"
          lead="Leave open whatever nobody knows yet."
        >
          <LookAtIt sheet={sheet} known={survey} />
        </Section>
      ) : null}
      <Looked looked={looked} />
    </ActPage>
  );
}

function Looked({ looked }: Readonly<{ looked: readonly SurveyLooked[] }>) {
  if (looked.length === 0) return null;
  return (
    <Section title="Who looked when" id="looked">
      <ul className={css['lines']}>
        {looked.map(({ version, surveyedOn, by }) => (
          <li key={version}>
            <DayText day={surveyedOn} style="long" />: {by}
          </li>
        ))}
      </ul>
    </Section>
  );
}
