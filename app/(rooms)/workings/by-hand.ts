/** A question of a calculation, made from the example that comes with it. */
export type Question = {
  key: string;
  label: string;
  hint: string | undefined;
  /** What stands in the field before anything is typed. */
  example: string;
  isLong: boolean;
};

type Shape = 'number' | 'yes or no' | 'text' | 'list of numbers' | 'list of texts' | 'as it stands';

/** The questions of a calculation, in the order of its example. */
export function questionsOf(example: Readonly<Record<string, unknown>>): Question[] {
  return Object.entries(example).map(([key, value]) => {
    const shape = shapeOf(value);
    return {
      ...{ key, label: labelOf(key), hint: hintOf(shape), example: textOf(shape, value) },
      isLong: shape === 'as it stands',
    };
  });
}

/**
 * What was typed, as the input of a calculation. What cannot be read stays the text that it is, so
 * that the calculation itself says what it must be; an empty field is left out.
 */
export function inputFrom(
  example: Readonly<Record<string, unknown>>,
  typed: Readonly<Record<string, string>>,
): Record<string, unknown> {
  const given: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(example)) {
    const text = (typed[key] ?? '').trim();
    if (text !== '') given[key] = valueOf(shapeOf(value), text);
  }
  return given;
}

function shapeOf(value: unknown): Shape {
  if (typeof value === 'number') return 'number';
  if (typeof value === 'boolean') return 'yes or no';
  if (typeof value === 'string') return 'text';
  if (!Array.isArray(value)) return 'as it stands';
  if (value.every((each) => typeof each === 'number')) return 'list of numbers';
  return value.every((each) => typeof each === 'string') ? 'list of texts' : 'as it stands';
}

function hintOf(shape: Shape): string | undefined {
  if (shape === 'yes or no') return 'yes or no';
  if (shape === 'list of numbers' || shape === 'list of texts') return 'with commas between them';
  return shape === 'as it stands' ? 'in the form of the example' : undefined;
}

function textOf(shape: Shape, value: unknown): string {
  if (shape === 'yes or no') return value === true ? 'yes' : 'no';
  if (Array.isArray(value) && shape !== 'as it stands') return value.map(String).join(', ');
  return shape === 'as it stands' ? JSON.stringify(value) : String(value);
}

function valueOf(shape: Shape, text: string): unknown {
  switch (shape) {
    case 'number':
      return numberOf(text);
    case 'yes or no':
      return text.toLowerCase() === 'yes' || text.toLowerCase() === 'true';
    case 'text':
      return text;
    case 'list of numbers':
      return partsOf(text).map(numberOf);
    case 'list of texts':
      return partsOf(text);
    case 'as it stands':
      return jsonOf(text);
  }
}

function partsOf(text: string): string[] {
  return text.split(/[,;\s]+/).filter((part) => part !== '');
}

function numberOf(text: string): unknown {
  return /^-?\d+(?:\.\d+)?$/.test(text) ? Number(text) : text;
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return text;
  }
}

const units: readonly (readonly [RegExp, string])[] = [
  [/Cents$/, ', in cents'],
  [/Mm$/, ', in mm'],
  [/Cm$/, ', in cm'],
  [/GPerCm3$/, ', in g per cm³'],
  [/G$/, ', in grams'],
  [/Percent$/, ', in per cent'],
];

/**
 * A key in words, with its unit behind it.
 *
 * @example labelOf('firedMm') // 'Fired, in mm'
 */
export function labelOf(key: string): string {
  if (key === 'cents') return 'Amount, in cents';
  const unit = units.find(([end]) => end.test(key));
  const name = unit ? key.replace(unit[0], '') : key;
  const words = name.replace(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase();
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${unit?.[1] ?? ''}`;
}

/** A figure of an answer as it is read. */
export function figureText(figure: unknown): string {
  if (typeof figure === 'string') return figure;
  if (figure === null || figure === undefined) return 'none';
  if (typeof figure === 'bigint' || typeof figure === 'number') return String(figure);
  if (typeof figure === 'boolean') return figure ? 'yes' : 'no';
  if (Array.isArray(figure)) return figure.map(figureText).join(' · ');
  return Object.entries(figure)
    .map(([key, value]) => `${labelOf(key).toLowerCase()} ${figureText(value)}`)
    .join(', ');
}
