import type { GoesWith } from '@/lib/commissions/reads/goes-with';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import type { CertificateField } from '@/lib/documents/input/certificate';
import { formatSize, formatWeight } from '@/lib/units/rules';

/** What is known of a commissioned piece, as its certificate would say it; empty for what is not. */
export function knownForCertificate(
  { title, collector, gallery, request }: Sheet,
  { medium, weightG, year }: GoesWith,
): Record<CertificateField, string> {
  const { widthUm, heightUm, depthUm } = request;
  const { lengthUnit } = gallery;
  return {
    title,
    artist: gallery.name,
    year: year === null ? '' : String(year),
    medium,
    size:
      widthUm === null || heightUm === null
        ? ''
        : formatSize({ widthUm, heightUm, depthUm }, lengthUnit),
    weight: weightG === null ? '' : formatWeight(weightG, lengthUnit === 'in' ? 'lb' : 'kg'),
    owner: collector.name,
  };
}
