import { Field } from '@/app/ui/form/field';
import { Folded } from '../../asking/folded';
import { YesNo } from '../../asking/yes-no';
import { countOf, measureText, wordsOf } from './texts';
import type { LookingProps } from './wall-questions';
import css from '../../commissions.module.css';

const placeNames = [
  ...['furnitureUm', 'agreedMiddleUm', 'servicesSought', 'services', 'isOutdoors', 'freezes'],
  ...['isOverPeople', 'quakes', 'heat'],
];

/** What is around the place: furniture, wires and pipes, weather, people. */
export function PlaceQuestions({ known, unit }: LookingProps) {
  const measure = { kind: 'measure', width: 'short', unit } as const;
  return (
    <Folded
      title="The place"
      about="height agreed, furniture, wires and pipes, weather, people below"
      names={placeNames}
      open
    >
      <div className={css['pair']}>
        <Field
          {...measure}
          name="agreedMiddleUm"
          label="Its middle was agreed at"
          hint="Above the floor, with the outline taped up."
          defaultValue={measureText(known?.agreedMiddleUm, unit)}
        />
        <Field
          {...measure}
          name="furnitureUm"
          label="Furniture below, up to"
          hint="0 for none."
          defaultValue={measureText(known?.furnitureUm, unit)}
        />
      </div>
      <YesNo
        name="servicesSought"
        legend="Were wires and pipes looked for"
        hint="Above and below outlets and switches, and with a finder."
        answer={known?.servicesSought}
      />
      <Field
        name="services"
        label="What was found of power, gas and water"
        hint="Where each is goes into the rows below."
        defaultValue={wordsOf(known, 'services')}
        maxLength={600}
      />
      <YesNo name="isOutdoors" legend="Is it outdoors" answer={known?.isOutdoors} />
      <YesNo name="freezes" legend="Does it freeze there" answer={known?.freezes} />
      <YesNo
        name="isOverPeople"
        legend="Do people sit, sleep or pass below"
        answer={known?.isOverPeople}
      />
      <YesNo name="quakes" legend="Does the ground quake there" answer={known?.quakes} />
      <Field
        name="heat"
        label="Heat, steam, splash, sun"
        hint="Range, fireplace, shower; the hour at which the sun comes."
        defaultValue={wordsOf(known, 'heat')}
        maxLength={300}
      />
    </Folded>
  );
}

const wayNames = [
  ...['access', 'steps', 'narrowWidthUm', 'narrowHeightUm', 'lift', 'floor', 'hasOutlet'],
  ...['people', 'building', 'note'],
];

/** The way in, and who is there. */
export function WayQuestions({ known, unit }: LookingProps) {
  const measure = { kind: 'measure', width: 'short', unit } as const;
  return (
    <Folded
      title="The way in"
      about="parking, steps, doors, lift, floor, who opens"
      names={wayNames}
      open={known !== null}
    >
      <Field
        name="access"
        label="From the van to the wall"
        hint="Parking and how far, gate and its code, turns."
        kind="textarea"
        rows={2}
        defaultValue={wordsOf(known, 'access')}
        maxLength={600}
      />
      <div className={css['pair']}>
        <Field
          name="steps"
          label="Steps"
          kind="count"
          width="short"
          defaultValue={countOf(known, 'steps')}
        />
        <Field
          {...measure}
          name="narrowWidthUm"
          label="Narrowest place, wide"
          defaultValue={measureText(known?.narrowWidthUm, unit)}
        />
        <Field
          {...measure}
          name="narrowHeightUm"
          label="and high"
          defaultValue={measureText(known?.narrowHeightUm, unit)}
        />
      </div>
      <Field
        name="lift"
        label="Lift in the house"
        hint="Inside size, weight, when it can be booked."
        defaultValue={wordsOf(known, 'lift')}
        maxLength={300}
      />
      <Field
        name="floor"
        label="Floor"
        hint="What it is and what protects it; whether a ladder can stand."
        defaultValue={wordsOf(known, 'floor')}
        maxLength={300}
      />
      <YesNo name="hasOutlet" legend="Is there an outlet near" answer={known?.hasOutlet} />
      <Field
        name="people"
        label="Who lets one in, who signs, children, a dog"
        defaultValue={wordsOf(known, 'people')}
        maxLength={600}
      />
      <Field
        name="building"
        label="What the building asks for"
        hint="Insurance paper, hours, noise, pads in the lift."
        defaultValue={wordsOf(known, 'building')}
        maxLength={600}
      />
      <Field
        name="note"
        label="Besides"
        kind="textarea"
        rows={2}
        defaultValue={wordsOf(known, 'note')}
        maxLength={2_000}
      />
    </Folded>
  );
}
