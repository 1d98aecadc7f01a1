import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { Slab } from '@/app/ui/page/section';
import { workKinds, workWords } from '@/lib/commissions/rules/proposal/build-up';
import { lineKinds, lineWords } from '@/lib/commissions/rules/proposal/lines';
import css from '../proposal.module.css';

type FiguresProps = Readonly<{
  said: Readonly<Record<string, string>>;
  faults: Readonly<Record<string, string>>;
}>;

const yesNo = [
  { value: 'yes', label: 'yes' },
  { value: 'no', label: 'no' },
];

/** The piece, the hours and the charges: sent as an address, so that it can be gone back to. */
export function FiguresForm({ said, faults }: FiguresProps) {
  const field = (name: string) => ({ name, defaultValue: said[name], fault: faults[name] });
  return (
    <Slab>
      <form
        method="get"
        aria-label="The piece, the hours and the charges"
        className={css['figures']}
      >
        <fieldset className={css['group']}>
          <legend>The piece</legend>
          <Field {...field('heightUm')} label="Height" kind="measure" width="short" />
          <Field {...field('widthUm')} label="Width" kind="measure" width="short" />
          <Field {...field('depthUm')} label="Mean depth of clay" kind="measure" width="short" />
          <Field {...field('pieces')} label="Pieces" kind="count" width="short" />
          <Field {...field('coats')} label="Coats of glaze" kind="count" width="short" />
          <Field {...field('firings')} label="Firings" kind="count" width="short" />
        </fieldset>
        <fieldset className={css['group']}>
          <legend>Hours</legend>
          {workKinds.map((kind) => (
            <Field
              key={kind}
              {...field(kind)}
              label={workWords[kind]}
              kind="measure"
              width="short"
            />
          ))}
        </fieldset>
        <fieldset className={css['group']}>
          <legend>Charges</legend>
          <Field {...field('otherCents')} label="Other materials" kind="money" width="short" />
          <Field {...field('crateCents')} label="Crate" kind="money" width="short" />
          <Field {...field('freightCents')} label="Freight" kind="money" width="short" />
          <Field {...field('travelCents')} label="Travel" kind="money" width="short" />
          <Field {...field('installationCents')} label="Hanging" kind="money" width="short" />
          <Field
            {...field('askedCents')}
            label="Your own price"
            kind="money"
            width="short"
            optional
          />
        </fieldset>
        <Choice
          name="framed"
          legend="A frame all round"
          options={yesNo}
          defaultValue={said['framed']}
        />
        <Choice
          name="apart"
          kind="tick"
          legend="What stands apart for the collector"
          hint="The rest is within the work."
          options={lineKinds
            .filter((kind) => kind !== 'work')
            .map((kind) => ({ value: kind, label: lineWords[kind] }))}
          defaultValue={said['apart']}
        />
        <Field
          {...field('designFeePercent')}
          label="Design fee, of the work"
          kind="percent"
          width="short"
        />
        <Choice
          name="designFeeCredited"
          legend="The design fee is part of the price"
          options={yesNo}
          defaultValue={said['designFeeCredited']}
        />
        <SubmitButton variant="quiet">Work it out</SubmitButton>
      </form>
    </Slab>
  );
}
