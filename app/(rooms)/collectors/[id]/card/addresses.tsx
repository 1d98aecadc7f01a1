import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { AddressOnCard } from '@/lib/collectors/reads/card';
import { addressLine } from '@/lib/collectors/rules';
import css from '../../collectors.module.css';
import { keepTheirAddress } from './actions';
import { TakeOff } from './take-off';

type AddressesProps = Readonly<{
  addresses: readonly AddressOnCard[];
  collectorId: string;
  mayWrite: boolean;
}>;

/** The further addresses of somebody, each under what it is to them. */
export function Addresses({ addresses, collectorId, mayWrite }: AddressesProps) {
  return (
    <>
      {addresses.length === 0 ? (
        <p className={css['quiet']}>No further address is known.</p>
      ) : (
        <ul className={css['card']}>
          {addresses.map((address) => (
            <li key={address.id}>
              <p>
                <strong>{address.label}</strong>
              </p>
              <p>{lineOf(address)}</p>
              {address.note === '' ? null : <p className={css['quiet']}>{address.note}</p>}
              {mayWrite ? (
                <details>
                  <summary>Change {address.label}</summary>
                  <AddressForm address={address} collectorId={collectorId} />
                  <TakeOff
                    {...{ collectorId }}
                    part="address"
                    partId={address.id}
                    what={address.label}
                  />
                </details>
              ) : null}
            </li>
          ))}
        </ul>
      )}
      {mayWrite ? (
        <details>
          <summary>Add an address</summary>
          <AddressForm address={null} collectorId={collectorId} />
        </details>
      ) : null}
    </>
  );
}

function lineOf({ street, city, state, postcode }: AddressOnCard): string {
  const known = { street, city, state: state || null, postcode: postcode || null };
  return addressLine(known) ?? '';
}

type AddressFormProps = Readonly<{ address: AddressOnCard | null; collectorId: string }>;

const nowhere = { label: '', street: '', city: '', state: '', postcode: '', note: '' };

function AddressForm({ address, collectorId }: AddressFormProps) {
  const was = address ?? nowhere;
  return (
    <FormFrame
      action={keepTheirAddress}
      label={address ? `Change ${address.label}` : 'Add an address'}
    >
      <RequestKey />
      <input type="hidden" name="collectorId" value={collectorId} />
      <input type="hidden" name="addressId" value={address?.id ?? ''} />
      <Field
        name="label"
        label="What it is to them"
        hint="Such as: the house by the water, her office, the builder’s yard."
        defaultValue={was.label}
        required
      />
      <Field name="street" label="Street" defaultValue={was.street} required />
      <div className={css['pair']}>
        <Field name="city" label="Town" defaultValue={was.city} required />
        <Field name="state" label="State" width="short" defaultValue={was.state} optional />
        <Field
          {...{ name: 'postcode', label: 'Postcode', width: 'short' }}
          defaultValue={was.postcode}
          optional
        />
      </div>
      <Field
        name="note"
        label="To remember"
        hint="No codes of doors or alarms: those go on the work order alone."
        defaultValue={was.note}
        optional
      />
      <SubmitButton variant="quiet">{address ? 'Keep the changes' : 'Add it'}</SubmitButton>
    </FormFrame>
  );
}
