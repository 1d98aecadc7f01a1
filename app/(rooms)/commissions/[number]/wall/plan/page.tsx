import Link from 'next/link';
import { redirect } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { Notice } from '@/app/ui/page/notice';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { findPlan, findWeight, type PlanShown } from '@/lib/installation/reads/plan/told';
import type { WeightKnown } from '@/lib/installation/reads/plan/weight';
import { findSurvey } from '@/lib/installation/reads/survey/told';
import { isHeavierThanPlanned, weightWords } from '@/lib/installation/rules/plan/weight-words';
import { decideOnSite } from '@/lib/walls/rules';
import { AboutCommission, ActPage } from '../../act-page';
import { readSheet, type SheetParams } from '../../read-sheet';
import { planIt } from '../actions';
import { beginWith, type PlanBegun } from './begin-with';
import { FixingFields } from './fixing-fields';
import { CleatFields, PieceFields } from './plan-fields';
import { PlanTold } from './plan-told';

export const metadata = { title: 'How it hangs' };

type PlanPageProps = Readonly<{
  params: SheetParams;
  searchParams: Promise<{ kept?: string | string[] }>;
}>;

/** How a piece hangs on its wall: worked out, drawn to scale, and what to mind. */
export default async function PlanPage({ params, searchParams }: PlanPageProps) {
  const actor = await requireActor('commissions.see');
  const sheet = await readSheet(actor, params);
  const { id, number, gallery } = sheet;
  const [survey, shown, weight, { kept }] = await Promise.all([
    findSurvey(actor, id),
    findPlan(actor, id, gallery.lengthUnit),
    findWeight(actor, id),
    searchParams,
  ]);
  if (!survey) redirect(`/commissions/${number}/wall`);
  const isOpen = sheet.ending === null && sheet.handOver === null;
  const mayPlan = isAllowed(actor.roles, 'installation.do') && isOpen;
  const begun = beginWith({ sheet, survey, weight, before: shown?.asked ?? null });
  return (
    <ActPage
      sheet={sheet}
      title="How it hangs"
      lead="Worked out for the wall as it was looked at last. It is no engineer’s approval."
    >
      {kept === undefined ? null : <Notice kind="done">The plan holds, and is kept.</Notice>}
      <p>
        <Link href={`/commissions/${number}/wall`}>The wall, as it was looked at</Link>
      </p>
      {survey.wall === null ? <Unknown /> : null}
      {shown ? <Kept sheet={sheet} shown={shown} weight={weight} /> : null}
      {mayPlan && survey.wall !== null ? (
        <Section title={shown ? 'Plan it anew' : 'Plan it'} id="plan">
          <PlanForm sheet={sheet} begun={begun} surveyId={survey.id} weight={weight} />
        </Section>
      ) : null}
    </ActPage>
  );
}

function Unknown() {
  return (
    <Notice kind="refused" title="No plan without a known wall">
      Nobody knows yet what the wall is made of. Prove it with a magnet, drill dust or an inspection
      hole, or ask a contractor; then write it down.
    </Notice>
  );
}

type KeptProps = Readonly<{ sheet: Sheet; shown: PlanShown; weight: WeightKnown | null }>;

function Kept({ sheet, shown, weight }: KeptProps) {
  const { number, gallery } = sheet;
  const unit = gallery.lengthUnit;
  const { plan, why, isOld, version, asked } = shown;
  const pdf = `/commissions/${number}/wall/plan/pdf`;
  return (
    <Section
      title={`The plan, version ${version}, by ${shown.by}`}
      act={plan ? <ButtonLink href={pdf}>The installer’s sheet</ButtonLink> : null}
    >
      {isOld ? (
        <Notice kind="caution" title="The wall was looked at again since">
          This plan was worked out for the wall as it was known before. Plan it anew.
        </Notice>
      ) : null}
      {weight && isHeavierThanPlanned(asked.piece.weightG, weight) ? (
        <Notice kind="caution" title="It is heavier than it was planned for">
          {`${weightWords(weight, unit)}. Plan it anew.`}
        </Notice>
      ) : null}
      {plan ? <PlanTold shown={shown} plan={plan} unit={unit} /> : null}
      {why.map((sentence) => (
        <Notice key={sentence} kind="refused">
          {sentence}
        </Notice>
      ))}
    </Section>
  );
}

type PlanFormProps = Readonly<{
  sheet: Sheet;
  begun: PlanBegun;
  surveyId: string;
  weight: WeightKnown | null;
}>;

function PlanForm({ sheet, begun, surveyId, weight }: PlanFormProps) {
  const unit = sheet.gallery.lengthUnit;
  const weightHint = weight ? `Known: ${weightWords(weight, unit)}.` : 'Nobody has weighed it yet.';
  return (
    <FormFrame action={planIt} label="How it hangs">
      <RequestKey />
      <AboutCommission sheet={sheet} />
      <input type="hidden" name="surveyId" value={surveyId} />
      <input type="hidden" name="lengthUnit" value={unit} />
      <PieceFields begun={begun} unit={unit} weightHint={weightHint} />
      <CleatFields begun={begun} unit={unit} />
      <FixingFields begun={begun} unit={unit} />
      <Caution>{decideOnSite}</Caution>
      <SubmitButton pendingText="Working it out…">
        Work it out, and keep it if it holds
      </SubmitButton>
    </FormFrame>
  );
}
