import { z } from 'zod';
import {
  bookingQuestions,
  type BookingQuestion,
  type Words,
} from '@/lib/installation/rules/diary/questions';

/** How it stood when the form was drawn. */
export const seenSequence = z
  .string()
  .regex(/^\d{1,6}$/)
  .transform(Number);

const fewer = 'Say it in fewer words.';
const oneOrMore = z.union([z.string().transform((one) => [one]), z.array(z.string()).max(40)]);

/** Who goes along besides the lead: none, one or several names ticked. */
export const crewIds = oneOrMore
  .transform((ids) => ids.filter((id) => id !== ''))
  .pipe(z.array(z.uuid('Choose people who work here.')).max(20))
  .default([]);

/** How long the way takes, one way: nothing, or up to two days in minutes. */
export const minutesOfWay = z
  .string()
  .trim()
  .regex(/^\d{0,4}$/, 'Write the minutes of the way, such as 40.')
  .transform(Number)
  .refine((minutes) => minutes <= 2_880, 'The way takes two days at most.')
  .default(0);

/** Where it is, and how far from the gallery. */
export const place = {
  address: z.string().trim().min(3, 'Write where it is, so that the van finds it.').max(200, fewer),
  travelMinutes: minutesOfWay,
};

const someText = (most: number) => z.string().trim().max(most, fewer).default('');

/** What is told of it in words. */
export const texts = {
  note: someText(1_000),
  meets: someText(200),
  prepares: someText(500),
  fallBack: someText(300),
};

const word = z
  .string()
  .trim()
  .max(300, fewer)
  .refine((text) => text === '' || text.length >= 3, 'Say why, so that nobody has to ask.')
  .default('');

type WordFields = Record<`word.${BookingQuestion}`, typeof word>;

/** Somebody's word on what is not as it should be, one field for each question. */
export const words: WordFields = {
  'word.before_ready': word,
  'word.balance_owed': word,
  'word.travel_short': word,
  'word.absent': word,
  'word.closed': word,
  'word.outside_hours': word,
};

type WordsRead = Readonly<Record<keyof WordFields, string>>;

/** Puts the words of a form together by what they are about. */
export function wordsOf<Form extends WordsRead>(
  form: Form,
): Omit<Form, keyof WordFields> & { words: Words } {
  const rest: Omit<Form, keyof WordFields> = { ...form };
  const said: Partial<Record<BookingQuestion, string>> = {};
  for (const about of bookingQuestions) {
    const why = form[`word.${about}`];
    if (why !== '') said[about] = why;
    Reflect.deleteProperty(rest, `word.${about}`);
  }
  return { ...rest, words: said };
}
