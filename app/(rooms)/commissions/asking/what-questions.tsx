import { Field } from '@/app/ui/form/field';
import { Folded } from './folded';
import type { AskingProps } from './known';
import { YesNo } from './yes-no';

const names = ['avoid', 'colours', 'bodyId', 'forFood'];

/** What it should be like, and what not. */
export function WhatQuestions({ known, bodies }: AskingProps) {
  const clays = [
    { value: '', label: 'not known yet' },
    ...bodies.map(({ id, name }) => ({ value: id, label: name })),
  ];
  return (
    <Folded
      title="What it is like"
      about="what they do not want, colours, clay, food"
      names={names}
      open={known !== null}
    >
      <Field
        name="avoid"
        label="What they do not want"
        kind="textarea"
        rows={2}
        defaultValue={known?.avoid}
      />
      <Field
        name="colours"
        label="Colours it should go with"
        kind="textarea"
        rows={2}
        defaultValue={known?.colours}
      />
      <Field
        name="bodyId"
        label="Clay body"
        kind="select"
        options={clays}
        defaultValue={known?.body?.id ?? ''}
        width="half"
      />
      <YesNo
        name="forFood"
        legend="Will food touch it"
        hint="A platter, a table top, a wall behind a board for bread."
        answer={known?.forFood}
      />
    </Folded>
  );
}
