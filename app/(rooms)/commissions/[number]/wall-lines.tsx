import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Section } from '@/app/ui/page/section';
import type { Actor } from '@/lib/access/rules';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { wallWords } from '@/lib/commissions/rules/words';
import { findPlan, type PlanShown } from '@/lib/installation/reads/plan/told';
import { findSurvey, type SurveyTold } from '@/lib/installation/reads/survey/told';
import { stillToLook } from '@/lib/installation/rules/survey/questions';
import css from '../commissions.module.css';

type WallLinesProps = Readonly<{ sheet: Sheet; actor: Actor }>;

/** The wall and how the piece hangs on it: what is known of both, in a line each. */
export async function WallLines({ sheet, actor }: WallLinesProps) {
  const { id, number, gallery } = sheet;
  const [survey, plan] = await Promise.all([
    findSurvey(actor, id),
    findPlan(actor, id, gallery.lengthUnit),
  ]);
  return (
    <Section
      title="The wall"
      id="wall"
      act={
        <span className={css['acts']}>
          <ButtonLink href={`/commissions/${number}/wall`} variant="quiet">
            The wall
          </ButtonLink>
          {survey ? (
            <ButtonLink href={`/commissions/${number}/wall/plan`} variant="quiet">
              How it hangs
            </ButtonLink>
          ) : null}
        </span>
      }
    >
      <ul className={css['lines']}>
        <li>{survey ? <Looked survey={survey} /> : 'Nobody has looked at it yet.'}</li>
        {survey ? <li>{planWords(plan)}</li> : null}
      </ul>
    </Section>
  );
}

function Looked({ survey }: Readonly<{ survey: SurveyTold }>) {
  const open = stillToLook(survey).length;
  const made = survey.wall ? wallWords[survey.wall] : 'what it is made of is not known yet';
  return (
    <>
      Looked at on <DayText day={survey.surveyedOn} style="long" />: {made}
      {open > 0 ? `; ${open} ${open === 1 ? 'thing is' : 'things are'} not known yet` : ''}.
    </>
  );
}

function planWords(shown: PlanShown | null): string {
  if (!shown) return 'How it hangs is not planned yet.';
  if (shown.isOld) return 'Its plan is old: the wall was looked at again since.';
  if (!shown.plan) return 'Its plan does not hold any more: plan it anew.';
  return `It hangs on ${shown.fixings ?? 'fixings'}.`;
}
