import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { slipMost } from '@/lib/counter/rules/slip';
import { addLine, addPaymentLine } from '../actions';
import css from '../counter.module.css';
import { Fold } from '../fold';

const withoutTag = [
  { value: 'goods', label: 'A piece without a tag' },
  { value: 'shipping', label: 'Freight' },
  { value: 'installation', label: 'Hanging it' },
  { value: 'design_work', label: 'Design work' },
];

/** What is put on a slip without a tag: also on one that has nothing on it yet. */
export function AddLines({ slipId, stamp }: Readonly<{ slipId: string; stamp: string }>) {
  const onto = <input type="hidden" name="slipId" value={slipId} />;
  return (
    <div className={css['folds']} key={stamp}>
      <Fold name="Without a tag, freight">
        <FormFrame action={addLine} label="Without a tag">
          <RequestKey />
          {onto}
          <Choice
            {...{ name: 'add', legend: 'What is it?', options: withoutTag }}
            {...{ defaultValue: 'goods', size: 'counter' }}
          />
          <Field
            {...{ name: 'words', label: 'In words', size: 'counter', optional: true }}
            hint="As it will stand on the receipt. A piece needs them."
            maxLength={slipMost.words}
          />
          <div className={css['side-by-side']}>
            <Field name="amount" label="Price of one" kind="money" size="counter" />
            <Field name="quantity" label="How many" kind="count" size="counter" defaultValue="1" />
          </div>
          <SubmitButton size="counter" variant="quiet">
            Put it on the slip
          </SubmitButton>
        </FormFrame>
      </Fold>
      <Fold name="Gift voucher">
        <FormFrame action={addLine} label="Gift voucher">
          <RequestKey />
          {onto}
          <input type="hidden" name="add" value="voucher" />
          <Field name="amount" label="For how much" kind="money" size="counter" />
          <Field
            {...{ name: 'forWhom', label: 'For whom', size: 'counter', optional: true }}
            maxLength={slipMost.words}
          />
          <p className={css['quiet']}>It gets its number when the slip is sold. It is not taxed.</p>
          <SubmitButton size="counter" variant="quiet">
            Put it on the slip
          </SubmitButton>
        </FormFrame>
      </Fold>
      <Fold name="Payment for a commission">
        <FormFrame action={addPaymentLine} label="Payment for a commission">
          <RequestKey />
          {onto}
          <div className={css['side-by-side']}>
            <Field name="commission" label="Commission number" kind="count" size="counter" />
            <Field name="amount" label="How much" kind="money" size="counter" />
          </div>
          <SubmitButton size="counter" variant="quiet">
            Put it on the slip
          </SubmitButton>
        </FormFrame>
      </Fold>
    </div>
  );
}
