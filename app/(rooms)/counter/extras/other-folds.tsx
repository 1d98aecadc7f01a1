import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import type { SlipShown } from '@/lib/counter/reads';
import { slipMost } from '@/lib/counter/rules/slip';
import { ChangeForm } from '../change-form';
import css from '../counter.module.css';
import { Fold } from '../fold';

type OtherProps = Readonly<{ shown: SlipShown }>;

/** Which numbers of an edition leave, when there is a choice. */
export function NumberFolds({ shown }: OtherProps) {
  const { slip, facts } = shown;
  return slip.content.lines.flatMap((line) => {
    if (line.kind !== 'piece') return [];
    const here = facts.numbers.get(line.skuId) ?? [];
    if (here.length === 0) return [];
    const title = facts.pieces.get(line.skuId)?.title ?? '';
    return [
      <Fold key={line.id} name={`Which number of ${title}`} now={line.numbers.join(', ')}>
        <ChangeForm slip={slip} does="numbers" label={`Which number of ${title}`}>
          <input type="hidden" name="lineId" value={line.id} />
          <Choice
            {...{ name: 'numbers', legend: 'On its back', kind: 'tick', size: 'counter' }}
            options={here.map((number) => ({ value: `${number}`, label: `${number}` }))}
            defaultValue={line.numbers.join(',')}
          />
          <SubmitButton size="counter" variant="quiet">
            These leave
          </SubmitButton>
        </ChangeForm>
      </Fold>,
    ];
  });
}

type ReferredProps = OtherProps & Readonly<{ designers: readonly { id: string; name: string }[] }>;

/** A designer who brought the buyer and gets a referral fee. */
export function ReferredFold({ shown, designers }: ReferredProps) {
  const { slip, facts } = shown;
  if (designers.length === 0) return null;
  return (
    <Fold name="Brought by a designer" now={facts.referrer?.name}>
      <ChangeForm slip={slip} does="referred" label="Brought by a designer">
        <Field
          {...{ name: 'collectorId', label: 'Who brought them', kind: 'select', size: 'counter' }}
          hint="A referral fee or the trade price, never both."
          defaultValue={slip.content.referredById ?? ''}
          options={[
            { value: '', label: 'nobody' },
            ...designers.map(({ id, name }) => ({ value: id, label: name })),
          ]}
        />
        <SubmitButton size="counter" variant="quiet">
          Keep it so
        </SubmitButton>
      </ChangeForm>
    </Fold>
  );
}

/** Where it is sold: the gallery, or a fair that is on. */
export function PlaceFold({ shown }: OtherProps) {
  const { slip, place, places } = shown;
  if (places.length < 2) return null;
  return (
    <Fold name="Sold at" now={place.name}>
      <ChangeForm slip={slip} does="place" label="Where it is sold">
        <Choice
          {...{ name: 'placeId', legend: 'Where is it sold?', size: 'counter', layout: 'down' }}
          options={places.map(({ placeId, name }) => ({ value: placeId, label: name }))}
          defaultValue={place.placeId}
        />
        <SubmitButton size="counter" variant="quiet">
          Sell from there
        </SubmitButton>
        <p className={css['quiet']}>Your next slips of today begin there too.</p>
      </ChangeForm>
    </Fold>
  );
}

/** Puts the slip aside under some words, to be taken up on any device. */
export function AsideFold({ shown }: OtherProps) {
  const { slip, collector } = shown;
  return (
    <Fold name="Set aside" now={slip.asideAs ?? undefined}>
      <ChangeForm slip={slip} does="aside" label="Set aside">
        <Field
          {...{ name: 'asideAs', label: 'Set aside as', size: 'counter' }}
          hint="Words by which you find it again, on any device."
          defaultValue={slip.asideAs ?? collector?.name ?? ''}
          maxLength={slipMost.words}
        />
        <SubmitButton size="counter" variant="quiet">
          Set it aside
        </SubmitButton>
      </ChangeForm>
    </Fold>
  );
}
