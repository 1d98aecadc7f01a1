import { notFound } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { SignatureFields } from '@/app/ui/signature/signature-fields';
import { SpotMarker } from '@/app/ui/spots/spot-marker';
import { requireActor } from '@/lib/access/reads';
import { spotsMost } from '@/lib/commissions/input/colours/showing';
import { roundFor } from '@/lib/commissions/reads/colours/for-collector';
import { listShownWhole } from '@/lib/commissions/reads/colours/studio';
import { approvalWays, approvalWayWords } from '@/lib/commissions/rules/words';
import { formatCents } from '@/lib/money/rules';
import { ActPage, AboutCommission } from '../../act-page';
import { readSheetFor } from '../../read-sheet';
import { noteChanges } from '../actions';

export const metadata = { title: 'Changes asked for' };

type ChangesPageProps = Readonly<{ params: Promise<{ number: string; shownId: string }> }>;

/** What a collector wants otherwise, as they say it here: by spots, in words, or both. */
export default async function ChangesPage({ params }: ChangesPageProps) {
  const actor = await requireActor('commissions.write');
  const sheet = await readSheetFor(actor, params, 'changes');
  const { shownId } = await params;
  const shown = (await listShownWhole(actor, sheet.id)).find((each) => each.id === shownId);
  if (!shown || shown.yes) notFound();
  const isSketch = shown.what === 'sketch';
  const rounds = isSketch ? await roundFor(sheet.id, shown.label) : null;
  const fee = rounds && rounds.feeCents > 0n ? formatCents(rounds.feeCents, sheet.telling) : null;
  return (
    <ActPage
      sheet={sheet}
      title={`Changes to ${isSketch ? 'sketch' : 'colour tile'} ${shown.label}`}
      lead={
        rounds
          ? `${rounds.included} rounds of changes are included; this is round ${rounds.next}.`
          : 'The next tile answers them.'
      }
    >
      {fee ? (
        <Notice kind="caution">{`This round costs ${fee}. Say so before it is written.`}</Notice>
      ) : null}
      <FormFrame action={noteChanges} label="Changes asked for">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <input type="hidden" name="what" value={shown.what} />
        <input type="hidden" name="shownId" value={shown.id} />
        <input type="hidden" name="contentSha256" value={shown.contentSha256} />
        <SpotMarker picture={shown.picture} most={spotsMost} />
        <Field name="words" label="What should be otherwise" kind="textarea" rows={3} optional />
        <Field name="askedBy" label="Who asks for it" defaultValue={sheet.collector.name} />
        <Choice
          name="how"
          legend="How it was said"
          options={approvalWays.map((value) => ({ value, label: approvalWayWords[value] }))}
          defaultValue="in_person"
        />
        {fee ? (
          <Choice
            name="agreesFee"
            kind="tick"
            legend="The further round"
            options={[{ value: 'yes', label: `They agreed to pay ${fee} for it` }]}
          />
        ) : null}
        {fee && sheet.agreement ? (
          <SignatureFields
            name={sheet.collector.name}
            onPaper
            under="Whoever agrees to the price, as they sign. It becomes a change order."
          />
        ) : null}
        <SubmitButton>Write the changes down</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}
