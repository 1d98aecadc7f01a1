import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { isSameState } from '@/lib/collectors/rules/trade';
import type { SlipShown } from '@/lib/counter/reads';
import { slipMost } from '@/lib/counter/rules/slip';
import { formatDay } from '@/lib/dates/rules';
import type { TaxPlaceListed } from '@/lib/tax/reads';
import { ChangeForm } from '../change-form';
import css from '../counter.module.css';
import { Fold } from '../fold';

const ways = [
  { value: 'taken', label: 'Taken along' },
  { value: 'sent', label: 'Sent' },
  { value: 'installed', label: 'We hang it' },
];
const wayWords = { taken: undefined, sent: 'sent', installed: 'we hang it' } as const;

type DeliveryProps = Readonly<{ shown: SlipShown; taxPlaces: readonly TaxPlaceListed[] }>;

/** How it leaves, where to, and whose sales tax applies there. */
export function DeliveryFold({ shown, taxPlaces }: DeliveryProps) {
  const { slip, collector } = shown;
  const { delivery } = slip.content;
  const theirs = taxPlaces.find(({ state }) => isSameState(state, collector?.state ?? ''));
  const brought = delivery.way === 'taken' ? null : delivery;
  return (
    <Fold name="Delivery" now={wayWords[delivery.way]}>
      <ChangeForm slip={slip} does="deliver" label="Delivery">
        <Choice
          {...{ name: 'way', legend: 'How does it leave?', options: ways }}
          {...{ defaultValue: delivery.way, size: 'counter' }}
        />
        <Field
          {...{ name: 'to', label: 'Where to', kind: 'textarea', rows: 3, size: 'counter' }}
          hint="As on the label. Leave it empty when it is taken along."
          defaultValue={brought?.to ?? collector?.address ?? ''}
          maxLength={slipMost.note}
        />
        <Field
          {...{ name: 'taxPlaceId', label: 'Sales tax of', kind: 'select', size: 'counter' }}
          hint="The place where it arrives. What is carried out of the door is taxed here."
          defaultValue={brought?.taxPlaceId ?? theirs?.id ?? ''}
          options={[
            { value: '', label: 'choose when it is sent or hung' },
            ...taxPlaces.map(({ id, name, state }) => ({
              value: id,
              label: state === '' ? name : `${name}, ${state}`,
            })),
          ]}
        />
        <SubmitButton size="counter" variant="quiet">
          So it leaves
        </SubmitButton>
      </ChangeForm>
    </Fold>
  );
}

/** Sold, and still hanging here until a day. */
export function CollectFold({ shown }: Readonly<{ shown: SlipShown }>) {
  const { slip } = shown;
  const { collect } = slip.content;
  return (
    <Fold
      name="Collected later"
      now={collect ? `after ${formatDay(collect.untilOn, 'short')}` : undefined}
    >
      <ChangeForm slip={slip} does="collect" label="Collected later">
        <Field
          {...{ name: 'untilOn', label: 'It hangs here until', kind: 'day', size: 'counter' }}
          defaultValue={collect?.untilOn ?? ''}
        />
        <Field
          {...{ name: 'note', label: 'Note', size: 'counter', optional: true }}
          defaultValue={collect?.note ?? ''}
          maxLength={slipMost.words}
        />
        <SubmitButton size="counter" variant="quiet">
          Let it hang
        </SubmitButton>
      </ChangeForm>
      {collect ? (
        <ChangeForm slip={slip} does="no_collect" label="Taken along after all">
          <SubmitButton size="counter" variant="quiet">
            It is taken along after all
          </SubmitButton>
        </ChangeForm>
      ) : null}
    </Fold>
  );
}

/** Whom it is for, and words for them: the gift receipt has them. */
export function GiftFold({ shown }: Readonly<{ shown: SlipShown }>) {
  const { slip } = shown;
  const { gift } = slip.content;
  const now = gift ? (gift.to === '' ? 'with words' : `for ${gift.to}`) : undefined;
  return (
    <Fold name="A gift" now={now}>
      <ChangeForm slip={slip} does="gift" label="A gift">
        <Field
          {...{ name: 'to', label: 'For whom', size: 'counter', maxLength: slipMost.words }}
          defaultValue={gift?.to ?? ''}
        />
        <Field
          {...{ name: 'words', label: 'Words for the card', kind: 'textarea', rows: 3 }}
          {...{ optional: true, maxLength: slipMost.note, defaultValue: gift?.words ?? '' }}
        />
        <SubmitButton size="counter" variant="quiet">
          {gift ? 'Keep it so' : 'It is a gift'}
        </SubmitButton>
        <p className={css['quiet']}>With both left empty it is no gift.</p>
      </ChangeForm>
    </Fold>
  );
}
