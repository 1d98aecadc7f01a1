import type { EventKind } from '@/lib/sending/rules/words';

/** What a page may say became of a shipment. */
export type StepShown = EventKind;

type Step = Readonly<{
  title: string;
  button: string;
  dayName: string;
  wordsName: string;
  caution: string | null;
}>;

/** The words of each step, and what to mind at it. */
export const steps: Readonly<Record<StepShown, Step>> = {
  packed: {
    title: 'It is packed',
    button: 'It is packed',
    dayName: 'Packed on',
    wordsName: 'Materials, and who packed',
    caution:
      'shake every box: nothing moves. Pictures of each layer and of the closed box, before it goes; the scale’s weight on the label.',
  },
  sent: {
    title: 'It left',
    button: 'It left',
    dayName: 'Left on',
    wordsName: 'To note',
    caution:
      'a declared value is no insurance. Count the boxes with the driver, and keep the paper that they sign.',
  },
  arrived: {
    title: 'It arrived',
    button: 'It arrived',
    dayName: 'Arrived on',
    wordsName: 'What was remarked on the carrier’s paper',
    caution:
      'ask them to open it within a day, to photograph each layer, and to keep every box and all padding.',
  },
  fetched: {
    title: 'It is fetched',
    button: 'They take it',
    dayName: 'Fetched on',
    wordsName: 'What was remarked',
    caution:
      'over 50 lb two people carry it; it lies flat, face up, and never on its edge without a crate.',
  },
  called_off: {
    title: 'It is called off',
    button: 'Call it off',
    dayName: 'On',
    wordsName: 'Why',
    caution: null,
  },
  noted: {
    title: 'Note something',
    button: 'Note it',
    dayName: 'On',
    wordsName: 'What there is to note',
    caution: null,
  },
};

/** Whether an address names a step. */
export function isStepShown(kind: string): kind is StepShown {
  return Object.hasOwn(steps, kind);
}
