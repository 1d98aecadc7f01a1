import { z } from 'zod';

const line = (most: number) =>
  z
    .string()
    .trim()
    .max(most, `Shorter, please: at most ${most} letters.`)
    .refine((text) => !/\p{Cc}/u.test(text), 'One line, without signs that cannot be seen.');

const needed = (words: string, most: number) => line(most).min(1, words);

/** What is typed on a certificate; what may be empty is then left off the paper. */
export const certificateInput = z.object({
  title: needed('Write the title of the piece.', 120),
  artist: needed('Write who made it.', 120),
  year: z
    .string()
    .trim()
    .regex(/^((19|20)\d\d)?$/, 'A year of four figures, such as 2027; or leave it empty.')
    .transform((text) => (text === '' ? null : Number(text))),
  medium: line(200),
  size: line(120),
  weight: line(60),
  owner: line(120),
  number: z
    .string()
    .regex(/^\d{0,4}$/)
    .optional()
    .transform((text) => (text ? Number(text) : null)),
});

/** See {@link certificateInput}. */
export type CertificateInput = z.output<typeof certificateInput>;

/** The questions of the certificate, by their names in its address. */
export const certificateFields = [
  'title',
  'artist',
  'year',
  'medium',
  'size',
  'weight',
  'owner',
] as const;

/** One of the {@link certificateFields}. */
export type CertificateField = (typeof certificateFields)[number];
