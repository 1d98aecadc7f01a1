import Link from 'next/link';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { AddressOnCard } from '@/lib/collectors/reads/card';
import type { OwnedShown } from '@/lib/collectors/reads/owned';
import css from '../../collectors.module.css';
import { keepPlace } from './actions';
import { TakeOff } from './take-off';

type OwnedProps = Readonly<{
  owned: readonly OwnedShown[];
  addresses: readonly AddressOnCard[];
  collectorId: string;
  seesReceipts: boolean;
  mayWrite: boolean;
}>;

/** How many pieces stand there before the rest is folded away. */
const shownFirst = 6;

/** What somebody owns and where it hangs: the newest, and the rest folded. */
export function Owned(props: OwnedProps) {
  const { owned, mayWrite, addresses, collectorId } = props;
  const [first, rest] = [owned.slice(0, shownFirst), owned.slice(shownFirst)];
  return (
    <>
      {owned.length === 0 ? <p className={css['quiet']}>Nothing of ours that we know of.</p> : null}
      <Pieces {...props} owned={first} />
      {rest.length > 0 ? (
        <details>
          <summary>{rest.length} more</summary>
          <Pieces {...props} owned={rest} />
        </details>
      ) : null}
      {mayWrite ? (
        <details>
          <summary>They told of another piece</summary>
          <PlaceForm {...{ addresses, collectorId }} piece={null} />
        </details>
      ) : null}
    </>
  );
}

function Pieces({ owned, mayWrite, ...rest }: OwnedProps) {
  return (
    <ul className={css['card']}>
      {owned.map((piece) => (
        <li key={piece.key}>
          <p>
            <cite>{piece.title}</cite>
            {piece.quantity > 1 ? ` × ${piece.quantity}` : ''}
            {piece.what === '' ? '' : `, ${piece.what}`}
            <span className={css['quiet']}>
              {' '}
              <By {...{ piece }} seesReceipts={rest.seesReceipts} />
            </span>
          </p>
          {piece.place?.note ? <p className={css['quiet']}>{piece.place.note}</p> : null}
          {mayWrite ? <Change {...rest} piece={piece} /> : <p>{hangsWords(piece)}</p>}
        </li>
      ))}
    </ul>
  );
}

function By({ piece, seesReceipts }: Readonly<{ piece: OwnedShown; seesReceipts: boolean }>) {
  const { by } = piece;
  if (by.kind === 'told') return 'as they told';
  if (by.kind === 'commission') {
    return (
      <>
        <Link href={`/commissions/${by.number}`}>commission {by.number}</Link>, handed over{' '}
        <DayText day={by.on} style="short" />
      </>
    );
  }
  const receipt = `receipt ${by.receiptNumber}`;
  return (
    <>
      {seesReceipts ? <Link href={`/receipts/${by.receiptNumber}`}>{receipt}</Link> : receipt},{' '}
      <DayText day={by.on} style="short" />
      {by.isGift ? ', bought as a gift' : ''}
    </>
  );
}

function hangsWords({ place }: OwnedShown): string {
  const words = [place?.addressLabel ?? '', place?.hangs ?? ''].filter((part) => part !== '');
  return words.length === 0 ? 'Where it hangs is not known yet.' : `Hangs: ${words.join(', ')}.`;
}

type ChangeProps = Omit<OwnedProps, 'owned' | 'mayWrite'> & Readonly<{ piece: OwnedShown }>;

function Change({ piece, ...rest }: ChangeProps) {
  const { collectorId } = rest;
  const isTold = piece.by.kind === 'told';
  return (
    <details>
      <summary>
        {hangsWords(piece)}
        <span className="heard-only"> {piece.title}: where it hangs</span>
      </summary>
      <PlaceForm {...rest} piece={piece} />
      {piece.place ? (
        <TakeOff
          {...{ collectorId }}
          part="owned"
          partId={piece.place.ownedId}
          what={piece.title}
          label={isTold ? 'Take off' : 'Forget where it hangs'}
        />
      ) : null}
    </details>
  );
}

type PlaceFormProps = Omit<ChangeProps, 'piece' | 'seesReceipts'> &
  Readonly<{ piece: OwnedShown | null }>;

const nowhere = { ownedId: '', addressId: null, hangs: '', note: '' };

function PlaceForm({ piece, collectorId, addresses }: PlaceFormProps) {
  const was = piece?.place ?? nowhere;
  return (
    <FormFrame
      action={keepPlace}
      label={piece ? `Where ${piece.title} hangs` : 'They told of another piece'}
    >
      <RequestKey />
      <input type="hidden" name="collectorId" value={collectorId} />
      <input type="hidden" name="ownedId" value={was.ownedId} />
      <WhichPiece piece={piece} />
      {addresses.length > 0 ? (
        <Field
          {...{ name: 'addressId', label: 'At', kind: 'select' }}
          defaultValue={was.addressId ?? ''}
          options={[
            { value: '', label: 'their own address, or not said' },
            ...addresses.map(({ id, label }) => ({ value: id, label })),
          ]}
        />
      ) : null}
      <Field
        {...{ name: 'hangs', label: 'Room and wall', defaultValue: was.hangs }}
        placeholder="stairs, north wall"
        optional
      />
      <Field
        {...{ name: 'note', label: 'To remember', defaultValue: was.note }}
        hint="Such as: two of our cleats, on brick; would lend it."
        optional
      />
      <SubmitButton variant="quiet">Write it down</SubmitButton>
    </FormFrame>
  );
}

/** Names the piece: what was sold and what was made are known, what was told of is written. */
function WhichPiece({ piece }: Readonly<{ piece: OwnedShown | null }>) {
  const by: OwnedShown['by'] = piece?.by ?? { kind: 'told' };
  switch (by.kind) {
    case 'sale':
      return <input type="hidden" name="saleLineId" value={by.saleLineId} />;
    case 'commission':
      return <input type="hidden" name="commissionId" value={by.commissionId} />;
    case 'told':
      return <Field name="title" label="The piece" defaultValue={piece?.title} required />;
  }
}
