import { CertificateForm } from '@/app/ui/certificate/certificate-form';
import { readCertificateAddress, type Query } from '@/app/ui/certificate/certificate-address';
import { Caution } from '@/app/ui/page/caution';
import { PageHead } from '@/app/ui/page/page-head';
import { Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { readGoesWith } from '@/lib/commissions/reads/goes-with';
import { readSheet, type SheetParams } from '../read-sheet';
import { knownForCertificate } from './known-for-certificate';

export const metadata = { title: 'Certificate of authenticity' };

type CertificatePageProps = Readonly<{ params: SheetParams; searchParams: Promise<Query> }>;

/** What is known of a commissioned piece, to be looked over and put on its certificate. */
export default async function CertificatePage({ params, searchParams }: CertificatePageProps) {
  const actor = await requireActor('commissions.see');
  const sheet = await readSheet(actor, params);
  const goesWith = await readGoesWith(actor, sheet);
  const address = readCertificateAddress(await searchParams, knownForCertificate(sheet, goesWith));
  const path = `/commissions/${sheet.number}`;
  return (
    <>
      <PageHead
        title="Certificate of authenticity"
        lead="Look it over: what is printed here is said for good."
        back={{ href: path, name: `${sheet.title}, commission ${sheet.number}` }}
      />
      {sheet.facts.handOver ? null : (
        <Caution>
          It is not handed over yet. A certificate is given with the finished piece, when it is
          paid.
        </Caution>
      )}
      {goesWith.pictureFileId === null ? (
        <Caution>
          No picture of the making is kept: the certificate will have none. A picture of the
          finished piece makes it harder to use for another one.
        </Caution>
      ) : null}
      <Slab>
        <CertificateForm path={`${path}/certificate`} address={address} />
      </Slab>
    </>
  );
}
