import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { requireActor } from '@/lib/access/reads';
import { listBatches } from '@/lib/commissions/reads/colours/studio';
import {
  momentsToKeep,
  progressKinds,
  progressWords,
} from '@/lib/commissions/rules/course/progress';
import { PictureField } from '../../picture-field';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';
import { keepIt } from './actions';

export const metadata = { title: 'Remember something' };

/** Something of the making or the hanging that nobody will be able to look at later. */
export default async function ProgressPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.write');
  const sheet = await readSheetFor(actor, params, 'progress');
  const batches = await listBatches(actor);
  return (
    <ActPage
      sheet={sheet}
      title="Remember something"
      lead={`Worth a picture: ${momentsToKeep.join('; ')}.`}
    >
      <FormFrame action={keepIt} label="Remember something">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <Choice
          name="kind"
          legend="What it is"
          options={progressKinds.map((value) => ({ value, label: progressWords[value] }))}
          defaultValue="picture"
        />
        <PictureField name="picture" label="Picture" optional />
        <Field
          name="words"
          label="In words"
          hint="What it shows, what was seen, what holds it and in what."
          kind="textarea"
          rows={2}
          optional
        />
        <Field name="weightG" label="Weight" kind="measure" width="short" optional />
        <Field name="firing" label="Number in the firing log" width="short" optional />
        <Field
          name="batchId"
          label="Bucket of glaze"
          kind="select"
          options={[
            { value: '', label: 'none' },
            ...batches.map(({ id, number, glaze }) => ({
              value: id,
              label: `${number}, ${glaze}`,
            })),
          ]}
          defaultValue=""
        />
        <Field name="on" label="Day" kind="day" width="short" defaultValue={sheet.telling.today} />
        <Choice
          name="shared"
          kind="tick"
          legend="Their page"
          options={[{ value: 'yes', label: 'Show it to the collector on their page' }]}
        />
        <SubmitButton pendingText="Keeping it…">Keep it</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}
