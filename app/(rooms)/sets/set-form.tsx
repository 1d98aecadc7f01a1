import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { SetShown } from '@/lib/catalogue/reads/sets';
import { plainCents } from '@/lib/money/rules';
import { keep } from './actions';

const splits = [
  {
    value: 'split_at_single_price',
    label: 'Only at the single prices',
    hint: 'A piece by itself costs what its own tag says.',
  },
  { value: 'may_be_split', label: 'Yes', hint: 'Each piece at its part of the set’s price.' },
  { value: 'never_split', label: 'Never', hint: 'They are sold together or not at all.' },
];

/** Asks what belongs to a set, what it costs, and whether it may be split. */
export function SetForm({ set }: Readonly<{ set: SetShown | null }>) {
  const known = set ? typedOf(set) : unknown;
  return (
    <FormFrame action={keep} label={set ? `Change ${set.title}` : 'Put a set together'}>
      <RequestKey />
      <input type="hidden" name="setId" value={known.setId} />
      <Field
        name="title"
        label="What it is called"
        defaultValue={known.title}
        maxLength={120}
        required
      />
      <Field
        name="code"
        label="Its code, for the tag"
        hint="Of its own, such as SHORE-SET; never the SKU of a piece."
        defaultValue={known.code}
        width="half"
        maxLength={24}
        required
      />
      <Field
        name="members"
        label="Its pieces"
        kind="textarea"
        rows={5}
        hint="One SKU in each line; how many of it, behind it. A scanner writes them here too."
        placeholder={'TERN-10-CEL 2\nFERN-5-COP'}
        defaultValue={known.members}
        required
      />
      <Field
        name="priceCents"
        label="The price of the whole set"
        kind="money"
        width="short"
        hint="Leave it empty when it costs what its pieces cost together."
        defaultValue={known.price}
        optional
      />
      <Choice
        name="maySplit"
        legend="May it be split?"
        options={splits}
        defaultValue={known.maySplit}
        layout="down"
      />
      <Field name="note" label="A note" defaultValue={known.note} maxLength={500} optional />
      <SubmitButton size="counter">{set ? 'Keep it so' : 'Put it together'}</SubmitButton>
    </FormFrame>
  );
}

const unknown = {
  ...{ setId: '', title: '', code: '', members: '', price: '', note: '' },
  maySplit: 'split_at_single_price',
};

function typedOf({ setId, title, code, maySplit, note, members, priceCents }: SetShown) {
  return {
    ...{ setId, title, code, maySplit, note },
    members: members.map((each) => `${each.code} ${each.quantity}`).join('\n'),
    price: priceCents === null ? '' : plainCents(priceCents),
  };
}
