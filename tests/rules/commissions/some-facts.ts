import type { CommissionFacts, JobFact } from '@/lib/commissions/rules/facts';
import type { Day } from '@/lib/dates/rules';
import { type Move } from '@/lib/studio/rules';
import { routes } from '../../helpers/usual-routes';

/** A commission that was asked for on 1 May and knows nothing else; more by name. */
export function someFacts(over: Partial<CommissionFacts> = {}): CommissionFacts {
  return {
    askedOn: '2026-05-01',
    agreement: null,
    sketches: [],
    colourTiles: [],
    proposals: [],
    changeOrders: [],
    plan: [],
    refunds: [],
    delays: [],
    asked: [],
    payments: [],
    override: null,
    jobs: [],
    appointments: [],
    isWallKnown: true,
    handOver: null,
    ending: null,
    ...over,
  };
}

/** An agreement of 4 May over 10,000.00 with half of it down. */
export const agreement = {
  agreedOn: '2026-05-04',
  priceCents: 1_000_000n,
  originalCents: 1_000_000n,
  depositCents: 500_000n,
  promisedOn: null,
  clayFromOn: null,
} as const;

/** Something shown on one day, approved on another or not yet. */
export function shown(label: string, shownOn: Day, approvedOn: Day | null = null) {
  return { label, shownOn, approvedOn, changesOn: null, areas: [], givenOn: shownOn };
}

/** A payment on a day. */
export function paid(amountCents: bigint, receivedOn: Day) {
  return { amountCents, receivedOn };
}

/** Everything that comes before the clay. */
export const beforeClay = {
  agreement,
  sketches: [shown('A', '2026-05-06', '2026-05-08')],
  colourTiles: [shown('1', '2026-05-10', '2026-05-12')],
  payments: [paid(500_000n, '2026-05-13')],
} as const;

/** A slip-cast job of 4 parts, opened on 14 May, whose parts have all come to a position. */
export function aJob(position: number, movedOn: Day = '2026-05-20'): JobFact {
  const moves = Array.from({ length: position }, (_none, from): Move => {
    const on = movedOn;
    const [fromPosition, toPosition] = [from, from + 1];
    return { id: String(from), fromPosition, toPosition, pieces: 4, movedOn: on, undoesId: null };
  });
  return { number: 7, pieces: 4, openedOn: '2026-05-14', steps: routes.slip_cast, moves };
}

/** The position of a slip-cast job's finished parts. */
export const finished = routes.slip_cast.length + 1;
