'use client';

import { SubmitButton } from '@/app/ui/button/submit-button';
import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { Notice } from '@/app/ui/page/notice';
import type { Shape } from '@/lib/studio/rules/parts/outline';
import type { ReliefSize } from '@/lib/studio/rules/parts/sizes';
import { saveDrawing } from '../actions';
import { lengthShown, sizeTyped } from './size-typed';
import type { BoardProps } from './board-props';
import css from './draw.module.css';

type SaveDrawingProps = BoardProps &
  Readonly<{
    shapes: readonly Shape[];
    /** The version that was drawn on. */
    base: number;
    setSize: (size: ReliefSize | null) => void;
    takeTheirs: () => void;
  }>;

/** Saves the drawing with the size of the relief; when somebody else saved meanwhile, asks which. */
export function SaveDrawing(props: SaveDrawingProps) {
  const { jobId, over, version, base, shapes, size, lengthUnit } = props;
  const isBehind = version !== base;
  const spares = shapes.filter(({ hasSpare }) => hasSpare).length;
  const onInput = (event: React.SyntheticEvent<HTMLDivElement>) => {
    const form = event.currentTarget.querySelector('form');
    if (!form) return;
    const typed = new FormData(form);
    const read = sizeTyped(textOf(typed, 'width'), textOf(typed, 'height'), lengthUnit);
    if (read) props.setSize(read);
  };
  return (
    <div onInput={onInput} className={css['save']}>
      {isBehind ? <DrawnMeanwhile {...props} /> : null}
      <FormFrame action={saveDrawing} label="Save the drawing">
        <RequestKey />
        <input type="hidden" name="jobId" value={jobId} />
        <input type="hidden" name="version" value={base} />
        <input type="hidden" name="over" value={isBehind ? version : ''} />
        <input type="hidden" name="fileId" value={over?.fileId ?? ''} />
        <input type="hidden" name="lengthUnit" value={lengthUnit} />
        <input type="hidden" name="drawing" value={JSON.stringify(shapes)} />
        <div className={css['grid-fields']}>
          <Field
            name="width"
            label="Finished width"
            kind="measure"
            unit={lengthUnit}
            size="counter"
            defaultValue={lengthShown(size?.widthUm, lengthUnit)}
          />
          <Field
            name="height"
            label="Finished height"
            kind="measure"
            unit={lengthUnit}
            size="counter"
            defaultValue={lengthShown(size?.heightUm, lengthUnit)}
          />
        </div>
        <p>
          {shapes.length === 1 ? '1 part' : `${shapes.length} parts`}
          {spares > 0 ? ` and ${spares} spare` : ''}.
        </p>
        <Caution>Once the first clay is begun the drawing stays as it is.</Caution>
        <SubmitButton size="counter" wide pendingText="Saving…">
          {isBehind ? 'Save mine in its place' : 'Save the drawing'}
        </SubmitButton>
      </FormFrame>
    </div>
  );
}

function DrawnMeanwhile({ by, jobNumber, takeTheirs }: SaveDrawingProps) {
  return (
    <Notice kind="caution" title={`${by || 'Somebody'} saved another drawing while you drew`}>
      <p>
        Yours is still here and on this device.{' '}
        <a href={`/studio/${jobNumber}/parts`} target="_blank" rel="noreferrer">
          Look at theirs in another window
        </a>
        , then save yours in its place, or take theirs.
      </p>
      <Button variant="quiet" size="counter" onClick={takeTheirs}>
        Take theirs
      </Button>
    </Notice>
  );
}

function textOf(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === 'string' ? value : '';
}
