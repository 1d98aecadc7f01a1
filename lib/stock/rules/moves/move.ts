import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { readSku } from '@/lib/catalogue/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { listedWords, type PlaceKind } from './place';

/** What lies ready to move: a SKU and how many, or one numbered piece of an edition. */
export type ReadyPiece = { sku: string; quantity: number; number: number | null };

/** The most lines on one move, and the most of one piece on it. */
export const moveMost = { lines: 60, quantity: 999 } as const;

/**
 * Reads what lies ready from an address: SKUs parted by points, each with how many or its number.
 *
 * What does not read is left out; the same SKU twice counts together, a number counts once.
 *
 * @example readReady('TS-10-CI.KF-8-MW*2.HR-14-MO~7') // one tern, two of the fern, heron number 7
 */
export function readReady(text: string): ReadyPiece[] {
  const pieces = text.split('.').flatMap((part): ReadyPiece[] => {
    const match = /^([^*~]+)(?:\*([1-9]\d{0,2})|~([1-9]\d{0,3}))?$/.exec(part);
    const sku = readSku(match?.[1] ?? '');
    if (!sku.ok) return [];
    const number = match?.[3] === undefined ? null : Number(match[3]);
    return [{ sku: sku.value, quantity: Number(match?.[2] ?? '1'), number }];
  });
  return pieces.reduce<ReadyPiece[]>(layReady, []);
}

/** Writes what lies ready as an address keeps it; {@link readReady} reads it back. */
export function writeReady(ready: readonly ReadyPiece[]): string {
  return ready
    .map(({ sku, quantity, number }) => {
      if (number !== null) return `${sku}~${number}`;
      return quantity === 1 ? sku : `${sku}*${quantity}`;
    })
    .join('.');
}

/**
 * Lays a piece ready, under the others or onto its line. What is full stays as it is.
 *
 * @example layReady([], { sku: 'TS-10-CI', quantity: 1, number: null }) // one line
 */
export function layReady(ready: readonly ReadyPiece[], piece: ReadyPiece): ReadyPiece[] {
  const line = ready.find((each) => each.sku === piece.sku && each.number === piece.number);
  if (!line) return ready.length < moveMost.lines ? [...ready, piece] : [...ready];
  if (piece.number !== null) return [...ready];
  return setReady(ready, piece, line.quantity + piece.quantity);
}

/** Changes how many of a piece lie ready; none takes it off. */
export function setReady(
  ready: readonly ReadyPiece[],
  piece: Pick<ReadyPiece, 'sku' | 'number'>,
  quantity: number,
): ReadyPiece[] {
  const most = piece.number === null ? moveMost.quantity : 1;
  const kept = Math.min(quantity, most);
  return ready.flatMap((each) => {
    if (each.sku !== piece.sku || each.number !== piece.number) return [each];
    return kept > 0 ? [{ ...each, quantity: kept }] : [];
  });
}

/** A piece as a move needs to know it, read when it is moved. */
export type PieceAtPlace = {
  skuId: string;
  sku: string;
  title: string;
  /** A piece of a stated edition moves by its number. */
  isNumbered: boolean;
  grade: 'first' | 'second' | 'irregular';
  onHand: number;
  held: number;
  /** The numbers of its edition that stand there. */
  numbers: readonly number[];
  /** The numbers that are held, and for whom anything of it is held. */
  heldNumbers: readonly number[];
  heldFor: readonly string[];
};

/** Why a piece was not moved. */
export type PieceRefusal =
  | { code: 'second_to_gallery'; title: string }
  | { code: 'number_needed'; title: string; numbers: readonly number[] }
  | { code: 'number_not_there'; title: string; number: number; place: string }
  | { code: 'number_held'; title: string; number: number; heldFor: readonly string[] }
  | { code: 'not_there'; title: string; onHand: number; place: string }
  | { code: 'held'; title: string; free: number; heldFor: readonly string[]; place: string };

/** Why nothing was moved. */
export type MoveRefusal =
  | PieceRefusal
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'nothing_ready' }
  | { code: 'unknown_place' }
  | { code: 'place_closed'; place: string }
  | { code: 'same_place'; place: string }
  | { code: 'unknown_sku'; sku: string };

/** A place as a move needs to know it. */
export type MovePlace = { id: string; name: string; kind: PlaceKind; isClosed: boolean };

/** What moves where. */
export type MoveAsked = {
  from: MovePlace | null;
  to: MovePlace | null;
  ready: readonly ReadyPiece[];
};

/** Pieces that may move. */
export type PieceMoving = { skuId: string; quantity: number; editionNumber?: number };

/**
 * Decides a move from what stands at a place at this moment.
 *
 * @param pieces by SKU, as they stand at the place they leave
 * @returns the pieces; refuses, in this order: nothing ready, a place nobody knows, a closed one, the
 *   same place, and then for each line: a SKU nobody knows, a second on its way to another gallery,
 *   an edition without its number, a number that is not there or held, fewer there, held for somebody
 */
export function decideMove(
  asked: MoveAsked,
  pieces: ReadonlyMap<string, PieceAtPlace>,
): Result<PieceMoving[], MoveRefusal> {
  const { from, to, ready } = asked;
  if (ready.length === 0) return refuse({ code: 'nothing_ready' });
  if (!from || !to) return refuse({ code: 'unknown_place' });
  const closed = [from, to].find((place) => place.isClosed);
  if (closed) return refuse({ code: 'place_closed', place: closed.name });
  if (from.id === to.id) return refuse({ code: 'same_place', place: from.name });
  const moving: PieceMoving[] = [];
  for (const line of ready) {
    const piece = pieces.get(line.sku);
    if (!piece) return refuse({ code: 'unknown_sku', sku: line.sku });
    const no = lineRefusal(line, piece, { from, to });
    if (no) return refuse(no);
    const { skuId } = piece;
    const number = line.number === null ? {} : { editionNumber: line.number };
    moving.push({ skuId, quantity: line.quantity, ...number });
  }
  return ok(moving);
}

function lineRefusal(
  line: ReadyPiece,
  piece: PieceAtPlace,
  { from, to }: { from: MovePlace; to: MovePlace },
): MoveRefusal | null {
  const { title, numbers, onHand, held, heldFor } = piece;
  const place = from.name;
  if (to.kind === 'consignee' && piece.grade !== 'first') {
    return { code: 'second_to_gallery', title };
  }
  if (line.number !== null) return numberRefusal(line.number, piece, place);
  if (piece.isNumbered) {
    return { code: 'number_needed', title, numbers };
  }
  if (line.quantity > onHand) return { code: 'not_there', title, onHand, place };
  if (line.quantity > onHand - held) {
    return { code: 'held', title, free: onHand - held, heldFor, place };
  }
  return null;
}

function numberRefusal(number: number, piece: PieceAtPlace, place: string): MoveRefusal | null {
  const { title, numbers, heldNumbers, heldFor } = piece;
  if (!numbers.includes(number)) return { code: 'number_not_there', title, number, place };
  return heldNumbers.includes(number) ? { code: 'number_held', title, number, heldFor } : null;
}

/** Says in full sentences why pieces were not moved. */
export function moveRefusalMessage(refusal: MoveRefusal): string {
  if ('title' in refusal) return pieceRefusalMessage(refusal);
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'nothing_ready':
      return 'Nothing lies ready yet. Scan the pieces first, or touch them in the list.';
    case 'unknown_place':
      return 'Say from which place they go, and where to.';
    case 'place_closed':
      return `“${refusal.place}” is closed; nothing goes there or comes from there any more.`;
    case 'same_place':
      return `They are at “${refusal.place}” already. Choose another place to move them to.`;
    case 'unknown_sku':
      return `No piece of ours has the number ${refusal.sku}.`;
  }
}

function pieceRefusalMessage(refusal: PieceRefusal): string {
  switch (refusal.code) {
    case 'second_to_gallery':
      return `${refusal.title} is a second; seconds are not given to another gallery.`;
    case 'number_needed':
      return `${refusal.title} is an edition: say which number. ${stand(refusal.numbers)}.`;
    case 'number_not_there':
      return `Number ${refusal.number} of ${refusal.title} is not at “${refusal.place}”.`;
    case 'number_held':
      return `Number ${refusal.number} of ${refusal.title} is held for ${listedWords(refusal.heldFor)}.`;
    case 'not_there':
      return notThere(refusal);
    case 'held':
      return heldWords(refusal);
  }
}

function notThere({ title, onHand, place }: { title: string; onHand: number; place: string }) {
  if (onHand === 0) return `By our books no ${title} stands at “${place}”.`;
  const few = onHand === 1 ? 'one stands' : `${onHand} stand`;
  return `By our books only ${few} at “${place}”: ${title}.`;
}

function heldWords({
  title,
  free,
  heldFor,
}: {
  title: string;
  free: number;
  heldFor: readonly string[];
}) {
  const rest = free === 0 ? 'None is free to go' : `Only ${free} may go`;
  return `${rest}: ${title} is held for ${listedWords(heldFor)}. End the hold first.`;
}

function stand(numbers: readonly number[]): string {
  if (numbers.length === 0) return 'None stands there';
  const words = listedWords(numbers.map(String));
  return numbers.length === 1 ? `Number ${words} stands there` : `Numbers ${words} stand there`;
}
