import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { techniques, techniqueWords } from '@/lib/studio/rules/routes';
import { openItsJob } from '../actions';
import { requireActor } from '@/lib/access/reads';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';

export const metadata = { title: 'Open the job' };

/** The job of a commission, opened in the studio. */
export default async function JobPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.write');
  const sheet = await readSheetFor(actor, params, 'job');
  const { agreement, mayBegin } = sheet;
  return (
    <ActPage
      sheet={sheet}
      title="Open the job"
      lead={
        mayBegin.may
          ? 'The studio can begin with its clay at once.'
          : 'The studio sees it; its clay waits until everything is there.'
      }
    >
      <FormFrame action={openItsJob} label="Open the job">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <Choice
          name="technique"
          legend="How it is made"
          defaultValue="slab_relief"
          options={techniques.map((value) => ({
            value,
            label: techniqueWords[value],
          }))}
        />
        <Field name="wanted" label="How many parts it has" kind="count" width="short" optional />
        <Field
          name="pieces"
          label="How many parts to begin"
          hint="With the spare ones: for a mural one in ten is common. The numbered drawing can say it later."
          kind="count"
          width="short"
        />
        <Field
          name="neededOn"
          label="Needed by"
          kind="day"
          width="short"
          defaultValue={agreement?.promisedOn ?? ''}
        />
        <SubmitButton>Open the job</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}
