import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { ChosenPiece } from '@/lib/holds/reads/chosen-pieces';
import { wait } from '../actions';
import { WhoFields, type KnownCollector } from './who-fields';

type WaitFormProps = Readonly<{ piece: ChosenPiece; collector: KnownCollector | null }>;

const whats = [
  { value: 'second_in_line', label: 'Second in line', hint: 'when the hold before ends' },
  {
    value: 'back_again',
    label: 'Tell them when it is back',
    hint: 'from the kiln, or brought back',
  },
];

/** Puts somebody down as second in line, or to be told when the piece is back. */
export function WaitForm({ piece, collector }: WaitFormProps) {
  return (
    <FormFrame action={wait} label="They wait">
      <RequestKey />
      <input type="hidden" name="skuId" value={piece.skuId} />
      <WhoFields collector={collector} />
      <Choice
        name="what"
        legend="They wait"
        size="counter"
        options={whats}
        defaultValue={piece.free > 0 ? 'back_again' : 'second_in_line'}
      />
      <Field name="note" label="A note" optional maxLength={500} />
      <SubmitButton variant="quiet" size="counter">
        Put them down
      </SubmitButton>
    </FormFrame>
  );
}
