/** One thing that happened to a SKU's pieces, as it was written down. */
export type StoryMovement = {
  /** Below zero for pieces that went; a move from place to place is told once, by its leaving. */
  quantity: number;
  reason:
    | 'opening'
    | 'made'
    | 'sold'
    | 'returned'
    | 'moved'
    | 'second'
    | 'counted'
    | 'broken'
    | 'missing';
  place: string;
  /** The place is the counter's own, and need not be said. */
  isHere: boolean;
  editionNumber: number | null;
  staff: string | null;
  note: string;
  sale: { number: number; channel: SaleChannel; to: string | null } | null;
  returned: { number: number; saleNumber: number; from: string | null } | null;
  move: { number: number; to: string } | null;
  count: number | null;
  stockListId: string | null;
  grade: 'first' | 'second' | 'irregular';
};

type SaleChannel = 'counter' | 'fair' | 'shipped' | 'commission' | 'consigned' | 'wholesale';

/** A paper that a sentence names, so that a page can lead there. */
export type StoryPaper =
  { kind: 'receipt' | 'move' | 'count'; number: number } | { kind: 'list'; id: string };

/** A stretch of a sentence, and the paper it names. */
export type StoryPart = { words: string; paper: StoryPaper | null };

/**
 * A movement as one sentence of a story, in parts.
 *
 * @example a sale reads: 1 sold at the counter on · receipt 1042 · to Hanne Ostrow.
 */
export function storyParts(movement: StoryMovement): StoryPart[] {
  const { note } = movement;
  const told = [plain(piecesOf(movement)), ...happening(movement)];
  const ended = note === '' ? [...told, plain('.')] : [...told, plain(`: ${sentence(note)}`)];
  return ended.filter((part) => part.words !== '');
}

/** The sentence of {@link storyParts} as one text. */
export function storySentence(movement: StoryMovement): string {
  return storyParts(movement)
    .map((part) => part.words)
    .join('');
}

function piecesOf({ quantity, editionNumber }: StoryMovement): string {
  return editionNumber === null ? `${Math.abs(quantity)}` : `Number ${editionNumber}`;
}

function happening(movement: StoryMovement): StoryPart[] {
  const { reason, count } = movement;
  if (reason === 'sold') return soldParts(movement);
  if (reason === 'returned') return returnedParts(movement);
  if (reason === 'moved') return movedParts(movement);
  const words = `${simpleWords[reason](movement)}${at(movement)}`;
  return [plain(` ${words}`), ...countOf(count), ...listOf(movement)];
}

type SimpleReason = Exclude<StoryMovement['reason'], 'sold' | 'returned' | 'moved'>;

const simpleWords: Readonly<Record<SimpleReason, (movement: StoryMovement) => string>> = {
  opening: ({ quantity }) => `${isOne(quantity) ? 'was' : 'were'} here when the list began`,
  made: ({ quantity, staff }) =>
    `${quantity > 0 ? 'came from' : 'went back to'} the studio${by(staff)}`,
  second: ({ quantity }) => {
    if (quantity > 0) return isOne(quantity) ? 'came as a second' : 'came as seconds';
    return isOne(quantity) ? 'was found to be a second' : 'were found to be seconds';
  },
  counted: ({ quantity }) => `${quantity > 0 ? 'more' : 'fewer'} counted than thought`,
  broken: () => 'broke',
  missing: ({ quantity }) => (quantity > 0 ? 'found again' : 'missing'),
};

function isOne(quantity: number): boolean {
  return Math.abs(quantity) === 1;
}

const soldWords: Readonly<Record<SaleChannel, string>> = {
  counter: 'sold at the counter',
  fair: 'sold at the fair',
  shipped: 'sold and sent',
  commission: 'handed over',
  consigned: 'sold by another gallery',
  wholesale: 'sent to a shop',
};

function soldParts(movement: StoryMovement): StoryPart[] {
  const { sale } = movement;
  if (!sale) return [plain(` sold${at(movement)}`)];
  const to = sale.to === null ? '' : ` to ${sale.to}`;
  const how = sale.channel === 'consigned' ? `sold by ${movement.place}` : soldWords[sale.channel];
  const words = sale.channel === 'consigned' ? '' : to;
  return [
    plain(` ${how} on `),
    { words: `receipt ${sale.number}`, paper: { kind: 'receipt', number: sale.number } },
    plain(words),
  ];
}

function returnedParts(movement: StoryMovement): StoryPart[] {
  const { returned, grade } = movement;
  const asWhat = grade === 'first' ? '' : ', as a second';
  if (!returned) return [plain(` came back${asWhat}${at(movement)}`)];
  const from = returned.from === null ? '' : ` from ${returned.from}`;
  return [
    plain(` came back${from}${asWhat}, sold on `),
    {
      words: `receipt ${returned.saleNumber}`,
      paper: { kind: 'receipt', number: returned.saleNumber },
    },
    plain(at(movement)),
  ];
}

function movedParts({ place, move }: StoryMovement): StoryPart[] {
  if (!move) return [plain(` moved from ${place}`)];
  return [
    plain(` moved from ${place} to ${move.to}, `),
    { words: `move ${move.number}`, paper: { kind: 'move', number: move.number } },
  ];
}

function countOf(number: number | null): StoryPart[] {
  if (number === null) return [];
  return [plain(', '), { words: `count ${number}`, paper: { kind: 'count', number } }];
}

function listOf({ stockListId }: StoryMovement): StoryPart[] {
  if (stockListId === null) return [];
  return [plain(', '), { words: 'from a list', paper: { kind: 'list', id: stockListId } }];
}

function by(staff: string | null): string {
  return staff === null ? '' : ` (${staff.split(' ')[0] ?? staff})`;
}

function at({ place, isHere }: StoryMovement): string {
  return isHere ? '' : `, at ${place}`;
}

function plain(words: string): StoryPart {
  return { words, paper: null };
}

function sentence(note: string): string {
  return /[.!?…]$/.test(note) ? note : `${note}.`;
}
