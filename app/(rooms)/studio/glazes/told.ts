import { refused } from '@/app/form-action';
import { glazeRefusalField, glazeRefusalMessage, type GlazeRefusal } from '@/lib/glazes/rules';

/** A refusal of the glaze book as a form shows it, at its field where it has one. */
export function notInTheBook(refusal: GlazeRefusal) {
  const message = glazeRefusalMessage(refusal);
  const field = glazeRefusalField(refusal);
  return refused(field === undefined ? message : { message, fields: { [field]: message } });
}

/** What was just done, from the address, as the next page says it. */
export const doneWords: Readonly<Record<string, string>> = {
  added: 'It is in the book.',
  changed: 'What is known now is in the book.',
  recipe: 'The new version is in the book. It is not for food until it is tested itself.',
  within: 'The test is in the book: both metals keep within the limits.',
  beyond: 'The test is in the book: more came out than is allowed, so it is not for food.',
  told: 'What became of it is in the book.',
};
