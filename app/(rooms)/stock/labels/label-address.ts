import { z } from 'zod';
import { readTypedPieces, typedMost, typedPiecesMessage } from '@/lib/catalogue/rules/typed-pieces';
import { labelKinds } from '@/lib/documents/rules/labels/words';
import { labelSheet, labelSheetKeys, labelsOn } from '@/lib/documents/rules/labels/sheets';
import type { LabelsAsked } from '@/lib/documents/reads/labels';
import { labelCodes, type LabelPrint } from '@/lib/documents/rules/labels/printing';

const text = z.preprocess((value) => [value].flat()[0], z.string().catch('').default(''));

const addressInput = z.object({
  pieces: text,
  /** SKUs one by one, as the list of tags to be written anew sends them. */
  sku: z.preprocess(
    (value) => (value === undefined ? [] : [value].flat()),
    z.array(z.string().max(40)).max(typedMost.lines).catch([]),
  ),
  place: text.pipe(z.union([z.literal(''), z.uuid()]).catch('')),
  kind: text.pipe(z.enum(labelKinds).catch('price_tag')),
  sheet: text.pipe(z.enum(labelSheetKeys).catch('letter-30')),
  codes: text.pipe(z.enum(labelCodes).catch('qr')),
  first: text,
});

/** The labels page's address, read: what is to be labelled, how, and what is wrong with it. */
export type LabelAddress = {
  /** The list as it was typed. */
  typed: string;
  placeId: string;
  /** Null when nothing was asked for yet, or something is wrong. */
  asked: LabelsAsked | null;
  print: LabelPrint;
  faults: { pieces?: string; first?: string };
};

/** Reads the address of the labels page; never refuses, but says what is wrong at its field. */
export function readLabelAddress(query: Record<string, unknown>): LabelAddress {
  const { pieces, sku, place, kind, sheet, codes, first } = addressInput.parse(query);
  const typed = [pieces, ...sku].filter((each) => each.trim() !== '').join('\n');
  const faults: LabelAddress['faults'] = {};
  let asked: LabelsAsked | null = place === '' ? null : { placeId: place };
  if (typed !== '') {
    const read = readTypedPieces(typed.slice(0, typedMost.characters));
    if (read.ok) asked = { typed: read.value };
    else faults.pieces = typedPiecesMessage(read.refusal);
  }
  const most = labelsOn(labelSheet(sheet));
  const firstAt = first.trim() === '' ? 1 : Number(first);
  const isOnSheet = Number.isInteger(firstAt) && firstAt >= 1 && firstAt <= most;
  if (!isOnSheet) faults.first = `This sheet has labels 1 to ${most}.`;
  const isWrong = faults.pieces !== undefined || faults.first !== undefined;
  return {
    ...{ typed, placeId: place, faults, asked: isWrong ? null : asked },
    print: { kind, sheet, codes, firstAt: isOnSheet ? firstAt : 1 },
  };
}

/** The address of the same labels as a PDF. */
export function labelPdfHref({ typed, placeId, print }: LabelAddress): string {
  const query = new URLSearchParams({
    ...{ kind: print.kind, sheet: print.sheet, codes: print.codes, first: String(print.firstAt) },
  });
  if (typed !== '') query.set('pieces', typed);
  else if (placeId !== '') query.set('place', placeId);
  return `/stock/labels/pdf?${query.toString()}`;
}
