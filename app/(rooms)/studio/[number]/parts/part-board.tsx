'use client';

import { useRouter } from 'next/navigation';
import { useState, type MouseEvent } from 'react';
import type { PartState } from '@/lib/studio/rules/parts/fates';
import { numbersWords } from '@/lib/studio/rules/parts/words';
import { ChosenActs, type ActsShared } from './chosen-acts';
import type { DrawnShape } from './drawn-shapes';
import { MapDrawing } from './map-drawing';
import css from './parts.module.css';

/** A part as the board chooses it. */
export type Choosable = Readonly<{
  id: string;
  number: number;
  position: number;
  /** It stands for its number; spares go with it only when that is ticked. */
  isBest: boolean;
}>;

/** Numbers that can be chosen at one touch: those at one place, or of one colour area. */
export type Group = Readonly<{
  key: string;
  name: string;
  numbers: readonly number[];
  /** What they are, for the sample beside the name; null for a colour area. */
  state: PartState | null;
}>;

type PartBoardProps = ActsShared &
  Readonly<{
    jobNumber: number;
    shapes: readonly DrawnShape[];
    aspect: number;
    label: string;
    parts: readonly Choosable[];
    places: readonly Group[];
    areas: readonly Group[];
    /** By position, where parts go next; null when they are finished. */
    nextNames: readonly (string | null)[];
    /** The part that is looked at. */
    looked: number | null;
    mayMove: boolean;
  }>;

/** The map to touch: one part to look at it, or several, or all of a place or area, to act on them. */
export function PartBoard(props: PartBoardProps) {
  const { shapes, aspect, jobNumber, looked } = props;
  const router = useRouter();
  const [several, setSeveral] = useState(false);
  const [withSpares, setWithSpares] = useState(true);
  const [chosen, setChosen] = useState<readonly number[]>([]);
  const hrefOf = (number: number) => `/studio/${jobNumber}/parts?part=${number}`;
  const touch = (number: number, event: MouseEvent) => {
    if (event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    if (several) setChosen(toggled(chosen, [number]));
    else router.push(hrefOf(number), { scroll: false });
  };
  const take = (group: Group) => {
    setSeveral(true);
    setChosen(toggled(chosen, group.numbers));
  };
  const shown = new Set(several ? chosen : looked === null ? [] : [looked]);
  return (
    <div className={css['board']}>
      <MapDrawing
        {...{ shapes, aspect, hrefOf }}
        label={props.label}
        chosen={shown}
        onTouch={touch}
      />
      <Groups label="By place" groups={props.places} chosen={several ? chosen : []} take={take} />
      {props.areas.length > 1 ? (
        <Groups
          label="By colour area"
          groups={props.areas}
          chosen={several ? chosen : []}
          take={take}
        />
      ) : null}
      {props.mayMove ? (
        <label className={css['tick']}>
          <input
            type="checkbox"
            checked={several}
            onChange={(event) => {
              setSeveral(event.target.checked);
              setChosen([]);
            }}
          />
          Choose several parts by touching them
        </label>
      ) : null}
      {props.mayMove && several ? (
        <Chosen {...props} {...{ chosen, withSpares, setWithSpares }} />
      ) : null}
    </div>
  );
}

function toggled(chosen: readonly number[], numbers: readonly number[]): number[] {
  const areAll = numbers.every((number) => chosen.includes(number));
  const others = chosen.filter((number) => !numbers.includes(number));
  return areAll ? others : [...others, ...numbers];
}

type GroupsProps = Readonly<{
  label: string;
  groups: readonly Group[];
  chosen: readonly number[];
  take: (group: Group) => void;
}>;

function Groups({ label, groups, chosen, take }: GroupsProps) {
  return (
    <div className={css['chips']} role="group" aria-label={label}>
      {groups.map((group) => (
        <button
          key={group.key}
          type="button"
          className={css['chip']}
          aria-pressed={group.numbers.every((number) => chosen.includes(number))}
          onClick={() => take(group)}
        >
          {group.state ? (
            <svg className={css['swatch']} data-state={group.state} aria-hidden="true">
              <rect width="100%" height="100%" />
              <rect width="100%" height="100%" />
            </svg>
          ) : null}
          {group.name}: {group.numbers.length}
        </button>
      ))}
    </div>
  );
}

type ChosenProps = PartBoardProps &
  Readonly<{
    chosen: readonly number[];
    withSpares: boolean;
    setWithSpares: (are: boolean) => void;
  }>;

function Chosen(props: ChosenProps) {
  const { parts, chosen, withSpares, nextNames } = props;
  const best = parts.filter(({ number, isBest }) => isBest && chosen.includes(number));
  const places = new Set(best.map(({ position }) => position));
  const placeOf = new Map(best.map(({ number, position }) => [number, position]));
  const meant = parts.filter(
    ({ number, position, isBest }) =>
      chosen.includes(number) && (isBest || (withSpares && placeOf.get(number) === position)),
  );
  if (meant.length === 0) return <p role="status">No part is chosen yet.</p>;
  const [place] = places;
  const nextName = places.size === 1 ? (nextNames[place ?? 0] ?? null) : 'their next steps';
  const hasSpares = parts.some(({ isBest, number }) => !isBest && chosen.includes(number));
  return (
    <section className={css['make']} aria-label="The chosen parts">
      <p role="status">
        <strong>{meant.length === 1 ? '1 part' : `${meant.length} parts`}</strong> chosen: numbers{' '}
        {numbersWords(chosen)}.
      </p>
      {hasSpares ? (
        <label className={css['tick']}>
          <input
            type="checkbox"
            checked={withSpares}
            onChange={(event) => props.setWithSpares(event.target.checked)}
          />
          Their spares too, where they stand at the same step
        </label>
      ) : null}
      <ChosenActs
        {...props}
        partIds={meant.map(({ id }) => id)}
        named={meant.length === 1 ? 'this part' : `these ${meant.length} parts`}
        nextName={nextName}
        isBegun={!places.has(0)}
      />
    </section>
  );
}
