import { cornerMoved, cornerTaken, wovenShapes } from '@/lib/studio/rules/parts/corners';
import {
  editRefusalWords,
  withCut,
  withOneOf,
  without,
  withPart,
  type Edited,
} from '@/lib/studio/rules/parts/editing';
import {
  gridOf,
  likelyArea,
  partsMost,
  renumbered,
  sparesToMake,
  type AreaSpot,
} from '@/lib/studio/rules/parts/laying';
import { isSame, type Corner, type Shape } from '@/lib/studio/rules/parts/outline';

/** What a touch does. */
export type Tool = 'choose' | 'draw' | 'cut';

/** A drawing in the making, with everything that can be taken back. */
export type DrawingState = {
  shapes: readonly Shape[];
  past: readonly (readonly Shape[])[];
  ahead: readonly (readonly Shape[])[];
  tool: Tool;
  /** Corners of the part, or of the cut, that is being drawn. */
  begun: readonly Corner[];
  chosen: readonly number[];
  /** What was refused or done last, in a sentence. */
  said: string;
};

/** What somebody does to a drawing. */
export type DrawingAct =
  | { do: 'take'; tool: Tool }
  | { do: 'corner'; at: Corner; around: DrawnAround }
  | { do: 'close'; around: DrawnAround }
  | { do: 'drop' }
  | { do: 'choose'; number: number | null; isMore: boolean }
  | { do: 'move_corner'; from: Corner; to: Corner }
  | { do: 'take_corner'; at: Corner }
  | { do: 'add_corner'; at: Corner }
  | { do: 'make_one' }
  | { do: 'take_away' }
  | { do: 'describe'; change: Partial<Pick<Shape, 'area' | 'note' | 'hasSpare'>> }
  | { do: 'spares'; aspect: number }
  | { do: 'number_anew' }
  | { do: 'grid'; rows: number; columns: number; isOffset: boolean; around: DrawnAround }
  | { do: 'put'; shapes: readonly Shape[] }
  | { do: 'back' }
  | { do: 'again' };

/** What lies under a drawing: the colour areas of its sketch, and its height over its width. */
export type DrawnAround = { areas: readonly AreaSpot[]; aspect: number };

/** How far one can go back. */
const pastMost = 100;

/** A drawing as it is opened. */
export function opened(shapes: readonly Shape[]): DrawingState {
  const tool = shapes.length === 0 ? 'draw' : 'choose';
  return { shapes, past: [], ahead: [], tool, begun: [], chosen: [], said: '' };
}

/** A drawing after an act; what is refused leaves it as it was and says why. */
export function drawn(state: DrawingState, act: DrawingAct): DrawingState {
  if (isChange(act)) return changed(state, act);
  switch (act.do) {
    case 'take':
      return taken(state, act.tool);
    case 'drop':
      return { ...state, begun: [], chosen: state.begun.length > 0 ? state.chosen : [], said: '' };
    case 'corner':
      return withCorner(state, act.at, act.around);
    case 'close':
      return closed(state, act.around);
    case 'choose':
      return chosenIn(state, act.number, act.isMore);
    case 'back':
    case 'again':
      return turned(state, act.do);
    case 'put':
      return { ...opened(act.shapes), said: '' };
  }
}

/** Which part is cut is asked anew, so that no touch meant for another begins a cut. */
function taken(state: DrawingState, tool: Tool): DrawingState {
  const chosen = tool === 'cut' ? [] : state.chosen;
  return { ...state, tool, chosen, begun: [], said: '' };
}

type Change = Exclude<
  DrawingAct,
  { do: 'take' | 'drop' | 'corner' | 'close' | 'choose' | 'back' | 'again' | 'put' }
>;

const changes: ReadonlySet<string> = new Set([
  'move_corner',
  'take_corner',
  'add_corner',
  'make_one',
  'take_away',
  'describe',
  'spares',
  'number_anew',
  'grid',
] satisfies Change['do'][]);

function isChange(act: DrawingAct): act is Change {
  return changes.has(act.do);
}

function changed(state: DrawingState, act: Change): DrawingState {
  const { shapes, chosen } = state;
  switch (act.do) {
    case 'move_corner':
      return kept(state, cornerMoved(shapes, act.from, act.to), 'A part would cross itself there.');
    case 'take_corner':
      return kept(state, cornerTaken(shapes, act.at), 'A part needs that corner.');
    case 'add_corner':
      return put(state, wovenShapes(shapes, [act.at]));
    case 'make_one':
      return edited(state, withOneOf(shapes, chosen), [Math.min(...chosen)]);
    case 'take_away':
      return { ...put(state, without(shapes, chosen)), chosen: [] };
    case 'describe':
      return put(
        state,
        shapes.map((each) => (chosen.includes(each.number) ? { ...each, ...act.change } : each)),
      );
    case 'spares': {
      const spares = sparesToMake(shapes, act.aspect);
      return put(
        state,
        shapes.map((each) => ({ ...each, hasSpare: spares.includes(each.number) })),
      );
    }
    case 'number_anew':
      return { ...put(state, renumbered(shapes)), chosen: [] };
    case 'grid':
      return gridded(state, act);
  }
}

function gridded(state: DrawingState, act: Extract<DrawingAct, { do: 'grid' }>): DrawingState {
  const { areas, aspect } = act.around;
  const shapes = gridOf(act).map((shape) => ({
    ...shape,
    area: likelyArea(shape.outline, areas, aspect),
  }));
  if (shapes.length === 0) {
    return { ...state, said: `A grid has at least 1 and at most ${partsMost} parts.` };
  }
  return { ...put(state, shapes), tool: 'choose', chosen: [], begun: [] };
}

function withCorner(state: DrawingState, at: Corner, around: DrawnAround): DrawingState {
  const { begun, tool, chosen } = state;
  const [first] = begun;
  if (tool === 'draw') {
    if (first && begun.length >= 3 && isSame(first, at)) return closed(state, around);
    if (begun.some((corner) => isSame(corner, at))) return state;
    return { ...state, begun: [...begun, at], said: '' };
  }
  const [number] = chosen;
  if (tool !== 'cut' || number === undefined) return state;
  if (!first) return { ...state, begun: [at], said: '' };
  return edited({ ...state, begun: [] }, withCut(state.shapes, number, [first, at]), [number]);
}

function closed(state: DrawingState, around: DrawnAround): DrawingState {
  if (state.begun.length < 3) return { ...state, said: 'A part has at least three corners.' };
  const added = withPart(state.shapes, state.begun, around);
  return edited({ ...state, begun: [] }, added, [state.shapes.length + 1]);
}

function chosenIn(state: DrawingState, number: number | null, isMore: boolean): DrawingState {
  if (number === null) return { ...state, chosen: [], said: '' };
  const { chosen } = state;
  if (!isMore) return { ...state, chosen: [number], said: '' };
  const next = chosen.includes(number)
    ? chosen.filter((each) => each !== number)
    : [...chosen, number];
  return { ...state, chosen: next, said: '' };
}

function turned(state: DrawingState, way: 'back' | 'again'): DrawingState {
  const { shapes, past, ahead } = state;
  const still = { ...state, begun: [], chosen: [], said: '' };
  if (way === 'back') {
    const before = past.at(-1);
    if (!before) return state;
    return { ...still, shapes: before, past: past.slice(0, -1), ahead: [shapes, ...ahead] };
  }
  const [next, ...later] = ahead;
  return next ? { ...still, shapes: next, past: [...past, shapes], ahead: later } : state;
}

function edited(state: DrawingState, result: Edited, chosen: readonly number[]): DrawingState {
  if ('refused' in result) return { ...state, said: editRefusalWords(result.refused) };
  return { ...put(state, result.shapes), chosen };
}

function kept(state: DrawingState, shapes: readonly Shape[] | null, refusal: string): DrawingState {
  return shapes ? put(state, shapes) : { ...state, said: refusal };
}

function put(state: DrawingState, shapes: readonly Shape[]): DrawingState {
  const past = [...state.past, state.shapes].slice(-pastMost);
  return { ...state, shapes, past, ahead: [], said: '' };
}
