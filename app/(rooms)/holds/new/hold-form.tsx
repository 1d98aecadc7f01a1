import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { ChosenPiece } from '@/lib/holds/reads/chosen-pieces';
import { hold } from '../actions';
import css from '../holds.module.css';
import { WhoFields, type KnownCollector } from './who-fields';

type HoldFormProps = Readonly<{
  piece: ChosenPiece;
  placeId: string;
  collector: KnownCollector | null;
  until: Readonly<{ untilOn: string; untilTime: string }>;
}>;

/** For whom, how many, until when. */
export function HoldForm({ piece, placeId, collector, until }: HoldFormProps) {
  const { one, numbers } = piece;
  const numbered = numbers.length > 0;
  return (
    <FormFrame action={hold} label="Hold it">
      <RequestKey />
      <input type="hidden" name="skuId" value={piece.skuId} />
      <input type="hidden" name="placeId" value={placeId} />
      <WhoFields collector={collector} />
      {numbered ? (
        <>
          <input type="hidden" name="quantity" value="1" />
          <Field
            name="editionNumber"
            label="Which number"
            kind="select"
            width="short"
            size="counter"
            options={numbers.map((number) => ({ value: `${number}`, label: `${number}` }))}
            defaultValue={`${one.editionNumber ?? numbers[0] ?? ''}`}
          />
        </>
      ) : (
        <Field
          name="quantity"
          label="How many"
          kind="count"
          width="short"
          size="counter"
          defaultValue={`${one.quantity}`}
          required
        />
      )}
      <div className={css['pair']}>
        <Field
          name="untilOn"
          label="Until the day"
          kind="day"
          size="counter"
          defaultValue={until.untilOn}
          required
        />
        <Field
          name="untilTime"
          label="And the hour"
          kind="time"
          size="counter"
          defaultValue={until.untilTime}
          required
        />
      </div>
      <Field name="note" label="A note" optional maxLength={500} />
      <SubmitButton size="counter">Hold it</SubmitButton>
    </FormFrame>
  );
}
