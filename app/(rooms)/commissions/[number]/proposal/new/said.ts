import { buildUpInput, type BuildUpFields } from '@/lib/commissions/input/proposal/proposal';
import type { BuildUpKept } from '@/lib/commissions/reads/proposal/proposals';
import type { RequestTold } from '@/lib/commissions/reads/sheet';
import { meanDepthUm } from '@/lib/commissions/rules/enquiry/cautions';
import { startingHours, type CommissionTerms } from '@/lib/commissions/rules/proposal/terms';
import { formatLength, type LengthSystem } from '@/lib/units/rules';

/** The words of an address, as Next hands them on. */
export type Asked = Readonly<Record<string, string | string[] | undefined>>;

/** What stands in the fields: what was asked, else the last proposal's, else the usual. */
export type Said = Readonly<Record<string, string>> & { readonly isAsked: boolean };

type Known = {
  asked: Asked;
  last: BuildUpKept | null;
  request: RequestTold;
  terms: CommissionTerms;
  lengthUnit: LengthSystem;
};

/** What the fields of the build-up begin with. */
export function saidOf({ asked, last, request, terms, lengthUnit }: Known): Record<string, string> {
  const usual = usualOf(request, terms, lengthUnit);
  const kept = last ? lastSaid(last, lengthUnit) : {};
  const isAsked = asked['widthUm'] !== undefined;
  const names = Object.keys(usual);
  return Object.fromEntries(
    names.map((name) => {
      const value = isAsked ? oneOf(asked[name]) : (kept[name] ?? usual[name]);
      return [name, value ?? ''];
    }),
  );
}

function oneOf(value: string | string[] | undefined): string {
  return Array.isArray(value) ? value.join(',') : (value ?? '');
}

function usualOf(
  request: RequestTold,
  terms: CommissionTerms,
  lengthUnit: LengthSystem,
): Record<string, string> {
  const { widthUm, heightUm, depthUm } = request;
  const told = (um: number | null) => (um === null ? '' : formatLength(um, lengthUnit));
  const size = widthUm !== null && heightUm !== null ? { widthUm, heightUm } : null;
  const none = { design: '', making: '', glazing: '', kiln: '', assembly: '', office: '' };
  return {
    ...{ widthUm: told(widthUm), heightUm: told(heightUm), depthUm: told(depthUm ?? meanDepthUm) },
    ...{ pieces: '40', coats: '3', firings: '4' },
    ...(size ? startingHours(terms.basis, size) : none),
    ...{ framed: 'yes', otherCents: '0', crateCents: '0', freightCents: '0' },
    ...{ travelCents: '0', installationCents: '0', askedCents: '' },
    apart: 'crate,freight,travel,installation',
    designFeePercent: terms.designFeePercent,
    designFeeCredited: terms.designFeeCredited ? 'yes' : 'no',
  };
}

/** Lengths were kept in micrometres and amounts in cents; the fields say them as people do. */
function lastSaid(last: BuildUpKept, lengthUnit: LengthSystem): Record<string, string> {
  return Object.fromEntries(
    Object.entries(last.said).map(([name, value]) => {
      if (Array.isArray(value)) return [name, value.join(',')];
      if (name.endsWith('Um')) return [name, formatLength(Number(value), lengthUnit)];
      if (name.endsWith('Cents')) return [name, amountOf(value)];
      return [name, value];
    }),
  );
}

function amountOf(cents: string): string {
  const padded = cents.padStart(3, '0');
  return `${padded.slice(0, -2)}.${padded.slice(-2)}`;
}

/** The fields read, or what is wrong with each. */
export function readSaid(
  said: Readonly<Record<string, string>>,
): { read: BuildUpFields } | { faults: Record<string, string> } {
  const asList = { ...said, apart: (said['apart'] ?? '').split(',').filter(Boolean) };
  const read = buildUpInput.safeParse(asList);
  if (read.success) return { read: read.data };
  const faults: Record<string, string> = {};
  for (const { path, message } of read.error.issues) faults[String(path[0])] ??= message;
  return { faults };
}
