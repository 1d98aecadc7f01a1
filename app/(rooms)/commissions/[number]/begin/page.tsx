import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { beforeClayWords } from '@/lib/studio/rules/words';
import { letBegin } from '../actions';
import { requireActor } from '@/lib/access/reads';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';

export const metadata = { title: 'Let the making begin' };

/** The owner lets the making begin before everything is there. */
export default async function BeginPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.override_start');
  const sheet = await readSheetFor(actor, params, 'begin');
  return (
    <ActPage
      sheet={sheet}
      title="Let the making begin all the same"
      lead={`Still missing: ${beforeClayWords(sheet.mayBegin.missing, sheet.money?.depositLeftCents ?? null)}.`}
    >
      <FormFrame action={letBegin} label="Let the making begin">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <Field
          name="why"
          label="Why it may begin"
          hint="It stays on the sheet for everybody to see."
          kind="textarea"
          rows={3}
        />
        <SubmitButton variant="danger">Let the making begin</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}
