import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import type { LoadCounts } from '@/lib/data/rules/plan';
import { bringIn } from '../../actions';

type ConfirmFileProps = Readonly<{ loadId: string; counts: LoadCounts; planSha256: string }>;

/** The yes to exactly the file that is shown. */
export function ConfirmFile({ loadId, counts, planSha256 }: ConfirmFileProps) {
  const lines = counts.newLines + counts.changedLines;
  if (lines === 0) {
    return (
      <Notice kind="caution">
        Nothing in this file is new or changed, so there is nothing to bring in.
      </Notice>
    );
  }
  return (
    <FormFrame action={bringIn} label="Bring it in">
      <RequestKey />
      <input type="hidden" name="loadId" value={loadId} />
      <input type="hidden" name="planSha256" value={planSha256} />
      <input type="hidden" name="refusedLines" value={counts.refusedLines} />
      {counts.refusedLines > 0 ? (
        <Choice
          name="leaveRefusedOut"
          legend="Some lines were refused"
          hint="Put them right in the file and bring it in again, or go on without them."
          kind="tick"
          options={[{ value: 'yes', label: 'Leave the refused lines out' }]}
        />
      ) : null}
      <div>
        <SubmitButton size="counter" pendingText="It begins…">
          {lines === 1 ? 'Bring in 1 line' : `Bring in ${lines.toLocaleString('en-US')} lines`}
        </SubmitButton>
      </div>
    </FormFrame>
  );
}
