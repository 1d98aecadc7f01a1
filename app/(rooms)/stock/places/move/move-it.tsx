import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { moveThem } from '../actions';

type MoveItProps = Readonly<{ from: string; to: string; ready: string; toName: string | null }>;

/** The last touch: everything that lies ready goes as one paper, or nothing does. */
export function MoveIt({ from, to, ready, toName }: MoveItProps) {
  return (
    <FormFrame action={moveThem} label="Move them">
      <RequestKey />
      <input type="hidden" name="fromId" value={from} />
      <input type="hidden" name="toId" value={to} />
      <input type="hidden" name="ready" value={ready} />
      <Field name="note" label="A note for the paper" maxLength={500} optional />
      <SubmitButton size="counter" wide pendingText="Moving them…">
        {toName === null ? 'Move them' : `Move them to ${toName}`}
      </SubmitButton>
    </FormFrame>
  );
}
