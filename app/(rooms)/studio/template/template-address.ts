import { z } from 'zod';
import {
  layOutTemplate,
  partsMost,
  templatePapers,
  templateRefusalMessage,
  type Template,
  type TemplateAsked,
  type TemplateRefusal,
} from '@/lib/clay/rules/template';
import type { ClayBodyKept } from '@/lib/commissions/reads/enquiry/bodies';
import { lengthInputIn } from '@/lib/units/input';

type Paper = TemplateAsked['paper'];

const text = z.preprocess((value) => [value].flat()[0], z.string().catch('').default(''));
const short = text.transform((typed) => typed.trim().slice(0, 40));

const addressInput = z.object({
  title: text.transform((typed) => typed.trim().slice(0, 120)),
  ...{ width: short, height: short, body: short, shrinkage: short },
  ...{ across: short, down: short, paper: short },
});

/** The questions of the page that may have a wrong answer. */
type Asked = 'width' | 'height' | 'shrinkage' | 'across' | 'down';

/** The template page's address, read: what was typed, what comes of it, and what is wrong. */
export type TemplateAddress = {
  typed: z.output<typeof addressInput>;
  paper: Paper;
  /** Null when nothing was asked for yet, or something is wrong. */
  template: Template | null;
  faults: { [name in Asked]?: string | undefined };
  /** What is wrong with all of it together. */
  refused: string | null;
};

/** What reading the address takes from the gallery. */
type Known = {
  lengthUnit: 'in' | 'mm';
  paperSize: Paper;
  bodies: readonly Pick<ClayBodyKept, 'id' | 'shrinkagePercent'>[];
};

/** Reads the address of the template page; never refuses, but says what is wrong at its field. */
export function readTemplateAddress(query: Record<string, unknown>, known: Known): TemplateAddress {
  const typed = addressInput.parse(query);
  const chosen = Object.keys(templatePapers).find((key) => key === typed.paper);
  const paper = (chosen as Paper | undefined) ?? known.paperSize;
  const nothing = { typed, paper, template: null, faults: {}, refused: null };
  if (typed.width === '' && typed.height === '') return nothing;

  const { asked, faults } = readAsked(typed, known);
  if (!asked) return { ...nothing, faults };
  const laid = layOutTemplate({ ...asked, paper });
  if (laid.ok) return { ...nothing, template: laid.value };
  const said = templateRefusalMessage(laid.refusal);
  const at = fieldOf(laid.refusal, asked);
  return at ? { ...nothing, faults: { [at]: said } } : { ...nothing, refused: said };
}

type Read = { asked: Omit<TemplateAsked, 'paper'> | null; faults: TemplateAddress['faults'] };

function readAsked(typed: TemplateAddress['typed'], { lengthUnit, bodies }: Known): Read {
  const length = lengthInputIn(lengthUnit);
  const [width, height] = [length.safeParse(typed.width), length.safeParse(typed.height)];
  const ofBody = bodies.find((body) => body.id === typed.body)?.shrinkagePercent ?? '';
  const shrinkagePercent = typed.shrinkage === '' ? ofBody : typed.shrinkage;
  if (width.success && height.success && shrinkagePercent !== '') {
    const fired = { firedWidthUm: width.data, firedHeightUm: height.data };
    const parts = { partsAcross: partsOf(typed.across), partsDown: partsOf(typed.down) };
    return { asked: { ...fired, ...parts, shrinkagePercent }, faults: {} };
  }
  const shrinkage = shrinkagePercent === '' ? noShrinkage(typed.body) : undefined;
  return { asked: null, faults: { width: faultOf(width), height: faultOf(height), shrinkage } };
}

function faultOf(read: z.ZodSafeParseResult<number>): string | undefined {
  return read.error?.issues[0]?.message;
}

function fieldOf({ code }: TemplateRefusal, { partsAcross }: Pick<TemplateAsked, 'partsAcross'>) {
  if (code === 'shrinkage_out_of_range') return 'shrinkage';
  if (code !== 'parts_out_of_range') return null;
  return partsAcross >= 1 && partsAcross <= partsMost ? 'down' : 'across';
}

function noShrinkage(bodyId: string): string {
  return bodyId === ''
    ? 'Choose a clay body, or write what the clay shrinks in a hundred.'
    : 'Nobody has measured what this clay shrinks. Write it here, such as 12.';
}

function partsOf(typed: string): number {
  if (typed === '') return 1;
  return /^\d{1,4}$/.test(typed) ? Number(typed) : Number.NaN;
}

/** The address of the same template as a PDF. */
export function templatePdfHref({ typed, paper }: TemplateAddress): string {
  const query = new URLSearchParams({ ...typed, paper });
  return `/studio/template/pdf?${query.toString()}`;
}
