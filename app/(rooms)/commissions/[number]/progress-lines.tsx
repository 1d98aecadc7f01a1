import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import { Hung, Wall } from '@/app/ui/piece/piece-hanging';
import { Picture } from '@/app/ui/piece/picture';
import type { ProgressTold } from '@/lib/commissions/reads/course/progress';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { keptFacts, progressWords } from '@/lib/commissions/rules/course/progress';
import { dayWord } from '@/lib/commissions/rules/course/sentences';
import { formatWeight } from '@/lib/units/rules';
import { AboutCommission } from './act-page';
import { showIt } from './progress/actions';
import css from '../commissions.module.css';

type ProgressLinesProps = Readonly<{ sheet: Sheet; progress: readonly ProgressTold[] }>;

/** What was remembered of the making: the newest first, and which of it the collector sees. */
export function ProgressLines({ sheet, progress }: ProgressLinesProps) {
  const { number, acts } = sheet;
  return (
    <Section
      title="What was remembered"
      id="progress"
      act={
        <span className={css['acts']}>
          {acts.has('progress') ? (
            <ButtonLink href={`/commissions/${number}/progress`} variant="quiet">
              Remember something
            </ButtonLink>
          ) : null}
          <ButtonLink href={`/commissions/${number}/evidence`} variant="quiet">
            The whole evidence
          </ButtonLink>
        </span>
      }
    >
      {progress.length === 0 ? (
        <p className={css['quiet']}>
          Nothing yet. Pictures, weights, firings and fixings before they are covered are kept here.
        </p>
      ) : (
        <Wall label="What was remembered of the making">
          {progress.toReversed().map((each) => (
            <Hung key={each.id}>
              <OneThing sheet={sheet} each={each} />
            </Hung>
          ))}
        </Wall>
      )}
    </Section>
  );
}

function OneThing({ sheet, each }: Readonly<{ sheet: Sheet; each: ProgressTold }>) {
  const { telling, gallery, acts } = sheet;
  const system = gallery.lengthUnit === 'in' ? 'lb' : 'kg';
  const facts = keptFacts(each, each.weightG === null ? '' : formatWeight(each.weightG, system));
  return (
    <>
      {each.picture ? (
        <div className={css['shown-picture']}>
          <Picture {...each.picture} size="hung" />
        </div>
      ) : null}
      <div className={css['shown-label']}>
        <p>{each.words}</p>
        <p className={css['quiet']}>
          {[progressWords[each.kind], ...facts, dayWord(each.on, telling.today)].join(' · ')}
        </p>
        <p className={css['quiet']}>{each.shared ? '✓ on their page' : 'not on their page'}</p>
        {acts.has('progress') ? (
          <FormFrame action={showIt} label={`Their page: ${each.words}`}>
            <RequestKey />
            <AboutCommission sheet={sheet} />
            <input type="hidden" name="progressId" value={each.id} />
            <input type="hidden" name="shared" value={each.shared ? 'no' : 'yes'} />
            <SubmitButton variant="quiet">
              {each.shared ? 'Take it off their page' : 'Put it on their page'}
            </SubmitButton>
          </FormFrame>
        ) : null}
      </div>
    </>
  );
}
