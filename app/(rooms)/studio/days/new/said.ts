import { askDayInput, type AskDayInput } from '@/lib/studio/input/asked';
import type { CommissionToAsk } from '@/lib/studio/reads/forecast/asked';
import type { Route } from '@/lib/studio/reads/routes';
import { formatLength, type LengthSystem } from '@/lib/units/rules';

/** The words of an address, as Next hands them on. */
export type Asked = Readonly<Record<string, string | string[] | undefined>>;

/** What stands in the fields. */
export type Said = Readonly<
  Record<'routeId' | 'pieces' | 'widthUm' | 'heightUm' | 'depthUm' | 'answersFirst', string>
>;

type Known = {
  asked: Asked;
  routes: readonly Route[];
  commission: CommissionToAsk | null;
  /** How many pieces the newest proposal reckons with; null where nobody knows. */
  pieces: number | null;
  lengthUnit: LengthSystem;
};

/** What the fields begin with: what was asked, else what the commission says, else the usual. */
export function saidOf(known: Known): Said {
  return isAskedFor(known.asked) ? askedSaid(known.asked) : usualSaid(known);
}

/** Whether the address asks for a day, or only for the empty form. */
export function isAskedFor(asked: Asked): boolean {
  return asked['routeId'] !== undefined;
}

function askedSaid(asked: Asked): Said {
  const text = (name: keyof Said) => textOf(asked, name);
  return {
    ...{ routeId: text('routeId'), pieces: text('pieces'), widthUm: text('widthUm') },
    ...{ heightUm: text('heightUm'), depthUm: text('depthUm') },
    answersFirst: text('answersFirst') === 'yes' ? 'yes' : 'no',
  };
}

/** One word of an address; empty where it says nothing. */
export function textOf(asked: Asked, name: string): string {
  return [asked[name] ?? ''].flat()[0] ?? '';
}

function usualSaid({ routes, commission, pieces, lengthUnit }: Known): Said {
  const told = (um: number | null) => (um === null ? '' : formatLength(um, lengthUnit));
  const first = routes[0]?.id ?? '';
  if (!commission) {
    const size = { widthUm: '', heightUm: '', depthUm: '' };
    return { routeId: first, pieces: '12', ...size, answersFirst: 'no' };
  }
  const relief = routes.find((route) => route.technique === 'slab_relief' && route.isUsual);
  const count = pieces ?? usualParts;
  const side = told(sideOfPart(commission, count));
  return {
    ...{ routeId: relief?.id ?? first, pieces: String(count), answersFirst: 'yes' },
    ...{ widthUm: side, heightUm: side, depthUm: told(commission.depthUm) },
  };
}

/** The parts of a relief while nobody has said how many. */
const usualParts = 20;

/** One part of a relief that is cut into so many, as if they were square, in whole millimetres. */
function sideOfPart({ widthUm, heightUm }: CommissionToAsk, pieces: number): number | null {
  if (widthUm === null || heightUm === null) return null;
  return Math.max(1, Math.round(Math.sqrt((widthUm * heightUm) / pieces) / 1_000)) * 1_000;
}

/** The fields read, or what is wrong with each. */
export function readSaid(
  said: Said,
): { read: AskDayInput } | { faults: Readonly<Record<string, string>> } {
  const read = askDayInput.safeParse(said);
  if (read.success) return { read: read.data };
  const faults: Record<string, string> = {};
  for (const { path, message } of read.error.issues) faults[String(path[0])] ??= message;
  return { faults };
}
