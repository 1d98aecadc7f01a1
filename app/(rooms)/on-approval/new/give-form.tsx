import { PictureField } from '@/app/(rooms)/commissions/picture-field';
import css from '@/app/(rooms)/holds/holds.module.css';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { plainCents } from '@/lib/money/rules';
import { give } from '../actions';

type GiveFormProps = Readonly<{
  collectorId: string;
  pieces: string;
  holdId: string;
  dueOn: string;
  valueCents: bigint;
}>;

/** When it is back, what it is worth, how it is, and what secures it. */
export function GiveForm({ collectorId, pieces, holdId, dueOn, valueCents }: GiveFormProps) {
  return (
    <FormFrame action={give} label="Give it home">
      <RequestKey />
      <input type="hidden" name="collectorId" value={collectorId} />
      <input type="hidden" name="pieces" value={pieces} />
      <input type="hidden" name="holdId" value={holdId} />
      <div className={css['pair']}>
        <Field
          name="dueOn"
          label="Due back"
          kind="day"
          size="counter"
          defaultValue={dueOn}
          required
        />
        <Field
          name="value"
          label="Worth in all"
          kind="money"
          size="counter"
          defaultValue={plainCents(valueCents)}
          required
        />
      </div>
      <Field
        name="condition"
        label="How it is"
        kind="textarea"
        rows={2}
        hint="Chips, crazing, the state of the frame. Nothing written means: without a flaw."
        optional
        maxLength={500}
      />
      <PictureField
        name="pictures"
        label="Pictures as it leaves"
        hint="All sides; a telephone can take them now. Up to eight."
        several
      />
      <Field
        name="security"
        label="What secures it"
        hint="A cheque that is kept, a deposit, a long acquaintance. Never the number of a card."
        optional
        maxLength={500}
      />
      <SubmitButton size="counter" pendingText="Writing the slip…">
        Give it home
      </SubmitButton>
    </FormFrame>
  );
}
