import {
  certificateFields,
  certificateInput,
  type CertificateField,
  type CertificateInput,
} from '@/lib/documents/input/certificate';

/** The parameters of a page's address, as Next.js gives them. */
export type Query = Readonly<Record<string, string | string[] | undefined>>;

/** The address of a certificate, read: what stands in its form, what is wrong, what is asked for. */
export type CertificateAddress = {
  values: Record<CertificateField, string>;
  faults: Partial<Record<string, string>>;
  /** Null when nothing was asked for yet, or something is wrong. */
  asked: CertificateInput | null;
  /** The same certificate as a query, for the address of its PDF. */
  query: string;
};

/**
 * Reads the address of a certificate; what was not typed is as it is known. Never refuses, but says
 * what is wrong at its field.
 */
export function readCertificateAddress(
  query: Query,
  known: Readonly<Record<CertificateField, string>>,
): CertificateAddress {
  const typed = Object.fromEntries(
    [...certificateFields, 'number'].flatMap((name) => {
      const [value] = [query[name]].flat();
      return value === undefined ? [] : [[name, value]];
    }),
  );
  const values = { ...known, ...typed };
  const hasAsked = Object.keys(typed).length > 0;
  const read = certificateInput.safeParse(values);
  const faults: CertificateAddress['faults'] = {};
  if (hasAsked) {
    for (const { path, message } of read.error?.issues ?? []) faults[path.join('.')] ??= message;
  }
  return {
    values,
    faults,
    asked: hasAsked && read.success ? read.data : null,
    query: new URLSearchParams(values).toString(),
  };
}

/** The parameters of a request's address in the form in which pages get them. */
export function queryOf(request: Request): Query {
  return Object.fromEntries(new URL(request.url).searchParams);
}
