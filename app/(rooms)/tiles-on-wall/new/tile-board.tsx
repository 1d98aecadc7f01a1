'use client';

import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { LengthSystem } from '@/lib/units/rules';
import type { TileWallAsked } from '@/lib/walls/rules/tiles/asked';
import { keepWall } from '../actions';
import { WallDrawing } from '../wall-drawing';
import { WallTold } from '../wall-told';
import { MeasureFields } from './measure-fields';
import { OpeningRows } from './opening-rows';
import { SetTools } from './set-tools';
import { useTileWall, type TileWallBoard } from './use-tile-wall';
import { typedAtFirst } from './wall-typed';
import css from '../tiles.module.css';

type TileBoardProps = Readonly<{
  /** A wall that was kept before, to be changed; null for a new one. */
  kept: TileWallAsked | null;
  title: string;
  commissionId: string | null;
  system: LengthSystem;
}>;

/** The board on which a wall of tiles is laid out: typed at the side, set tiles put by touch. */
export function TileBoard({ kept, title, commissionId, system }: TileBoardProps) {
  const board = useTileWall(kept, system);
  const { drawn, said, chosen, touch } = board;
  return (
    <div className={css['board']}>
      <div className={css['drawn']}>
        <p role="status" className={css['says']} data-refused={said !== '' || undefined}>
          {said || 'Touch a tile to set a relief there; touch a relief to choose it.'}
        </p>
        {drawn ? <WallDrawing {...drawn} system={system} chosen={chosen} onTouch={touch} /> : null}
      </div>
      <div className={css['asked']}>
        <SetTools board={board} />
        <form
          aria-label="The wall"
          className={css['group']}
          onChange={(event) => board.type(event.currentTarget)}
          onSubmit={(event) => event.preventDefault()}
        >
          <h2>The wall</h2>
          <MeasureFields first={typedAtFirst(kept, system)} faults={board.faults} />
          <OpeningRows board={board} />
        </form>
        <SaveWall {...{ board, title, commissionId }} />
      </div>
      <div className={css['told']}>{drawn ? <WallTold {...drawn} system={system} /> : null}</div>
    </div>
  );
}

type SaveWallProps = Pick<TileBoardProps, 'title' | 'commissionId'> &
  Readonly<{ board: TileWallBoard }>;

function SaveWall({ board, title, commissionId }: SaveWallProps) {
  const { asked } = board;
  return (
    <FormFrame action={keepWall} label="Keep the wall">
      <RequestKey />
      <input type="hidden" name="commissionId" value={commissionId ?? ''} />
      <input type="hidden" name="asked" value={asked ? JSON.stringify(asked) : ''} />
      <Field
        name="title"
        label="Name of the wall"
        placeholder="Kitchen, behind the range"
        defaultValue={title}
        maxLength={120}
        required
      />
      <SubmitButton disabled={asked === null}>Keep it</SubmitButton>
    </FormFrame>
  );
}
