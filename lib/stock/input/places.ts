import { z } from 'zod';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import { ownPlaceKinds } from '../rules/moves/place';
import { readReady } from '../rules/moves/move';

const noteMost = 500;
const nameMost = 60;

/** A few words that go with a paper: at most 500 characters, and never the number of a card. */
export const paperNote = z
  .string()
  .trim()
  .max(noteMost, `Keep the note to ${noteMost} characters.`)
  .refine((text) => !looksLikeCardNumber(text), {
    message: 'That looks like the number of a card. It is never kept here; leave it out.',
  })
  .default('');

const placeName = z
  .string()
  .trim()
  .transform((text) => text.replace(/\s+/g, ' '))
  .pipe(
    z
      .string()
      .min(1, 'Write how the place is called.')
      .max(nameMost, `Keep the name to ${nameMost} characters.`),
  );

const placeKind = z.enum(ownPlaceKinds, { error: 'Say what kind of place it is.' });

/** The form that adds a place. */
export const addPlaceInput = z.object({ requestKey: z.uuid(), name: placeName, kind: placeKind });

/** The form that renames a place; another gallery's or a fair's keeps its kind. */
export const renamePlaceInput = z.object({
  requestKey: z.uuid(),
  placeId: z.uuid(),
  name: placeName,
  kind: placeKind.optional(),
});

/** The form that closes a place. */
export const closePlaceInput = z.object({ requestKey: z.uuid(), placeId: z.uuid() });

const placeChoice = z.union([z.uuid(), z.literal('')]).prefault('');

/** The form that moves what lies ready. */
export const movePiecesInput = z.object({
  requestKey: z.uuid(),
  fromId: placeChoice,
  toId: placeChoice,
  /** As {@link readReady} reads it. */
  ready: z.string().max(2_400).prefault('').transform(readReady),
  note: paperNote,
});

/** See {@link addPlaceInput}. */
export type AddPlaceInput = z.output<typeof addPlaceInput>;
/** See {@link renamePlaceInput}. */
export type RenamePlaceInput = z.output<typeof renamePlaceInput>;
/** See {@link closePlaceInput}. */
export type ClosePlaceInput = z.output<typeof closePlaceInput>;
/** See {@link movePiecesInput}. */
export type MovePiecesInput = z.output<typeof movePiecesInput>;
