import { z } from 'zod';
import { approvalWays } from '@/lib/commissions/rules/words';
import { dayInput } from '@/lib/dates/input';
import { lines, onePicture, saidLine } from './atoms';

const requestKey = z.uuid();
const commissionId = z.uuid();

/** The form that shows a sketch. */
export const showSketchInput = z.strictObject({
  requestKey,
  commissionId,
  picture: onePicture,
  note: lines,
  shownOn: dayInput,
});

/** The form that shows a colour tile. */
export const showColourTileInput = z.strictObject({
  requestKey,
  commissionId,
  picture: onePicture,
  glazes: saidLine('Write the glazes in order, as on the back of the tile.', 400),
  shownOn: dayInput,
});

/** The form that writes down a yes; the hash says which picture was looked at. */
export const approveInput = z.strictObject({
  requestKey,
  commissionId,
  what: z.enum(['sketch', 'colour_tile']),
  shownId: z.uuid(),
  fileSha256: z.string().regex(/^[0-9a-f]{64}$/, 'Look at the sheet again first.'),
  approvedBy: saidLine('Write who said yes.'),
  how: z.enum(approvalWays, { error: 'Say how the yes was given.' }),
  approvedOn: dayInput,
});

/** What showing a sketch takes. */
export type ShowSketchInput = z.output<typeof showSketchInput>;

/** What showing a colour tile takes. */
export type ShowColourTileInput = z.output<typeof showColourTileInput>;

/** What writing down a yes takes. */
export type ApproveInput = z.output<typeof approveInput>;
