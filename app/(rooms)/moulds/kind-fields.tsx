import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { mouldKinds, mouldKindWords, type MouldKind } from '@/lib/catalogue/rules/moulds';

const kinds = mouldKinds.map((kind) => ({
  value: kind,
  label: mouldKindWords[kind].name,
  hint: mouldKindWords[kind].hint,
}));

type KindFieldsProps = Readonly<{
  kind: MouldKind;
  fromId: string | null;
  slipMl: number | null;
  /** Models and masters that it can have been made from. */
  sources: readonly { id: string; code: string; kind: MouldKind; design: string }[];
}>;

/** What a mould is for, what it was made from, and the slip that one cast takes. */
export function KindFields({ kind, fromId, slipMl, sources }: KindFieldsProps) {
  return (
    <>
      <Choice name="kind" legend="What it is for" options={kinds} defaultValue={kind} />
      {sources.length === 0 ? null : (
        <Field
          name="fromId"
          label="Made from"
          kind="select"
          options={[
            { value: '', label: 'not known, or nothing' },
            ...sources.map((each) => ({
              value: each.id,
              label: `${each.code}, ${mouldKindWords[each.kind].name} of ${each.design}`,
            })),
          ]}
          defaultValue={fromId ?? ''}
        />
      )}
      <Field
        name="slipMl"
        label="Slip for one cast"
        hint="Fill it with water and weigh that: a gram is a millilitre."
        kind="measure"
        unit="ml"
        width="short"
        defaultValue={slipMl === null ? '' : `${slipMl}`}
        optional
      />
    </>
  );
}
