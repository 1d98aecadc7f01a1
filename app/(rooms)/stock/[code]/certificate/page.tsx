import { CertificateForm } from '@/app/ui/certificate/certificate-form';
import type { Query } from '@/app/ui/certificate/certificate-address';
import { Caution } from '@/app/ui/page/caution';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { editionNumberWords } from '@/lib/catalogue/rules/edition';
import { readCertifiedPiece } from './certified-piece';

export const metadata = { title: 'Certificate of authenticity' };

type CertificatePageProps = Readonly<{
  params: Promise<{ code: string }>;
  searchParams: Promise<Query>;
}>;

/** What is known of a piece, to be looked over and put on its certificate. */
export default async function CertificatePage({ params, searchParams }: CertificatePageProps) {
  const actor = await requireActor('stock.see');
  const { code } = await params;
  const { piece, edition, numbers, address } = await readCertifiedPiece(
    actor,
    code,
    await searchParams,
  );
  const path = `/stock/${piece.code}`;
  const options = edition
    ? numbers.map((number) => ({
        value: String(number),
        label: editionNumberWords(number, edition),
      }))
    : undefined;
  return (
    <>
      <PageHead
        title="Certificate of authenticity"
        lead="Look it over: what is printed here is said for good."
        back={{ href: path, name: piece.title }}
      />
      {edition ? (
        <Caution>
          Some states say what has to be told to whoever buys a multiple, and for how long it has to
          be kept: ask a lawyer what holds where it is sold.
        </Caution>
      ) : null}
      {options?.length === 0 ? (
        <Empty title="None of the edition has come yet">
          A certificate belongs to one number, and that number has to be there.
        </Empty>
      ) : (
        <Slab>
          <CertificateForm path={`${path}/certificate`} address={address} numbers={options} />
        </Slab>
      )}
    </>
  );
}
