import { Choice } from '@/app/ui/form/choice';
import { signedPlaceWords, staffPlaces } from '@/lib/commissions/rules/agreement/paper';

/** Where it is signed, and whether the papers of the right to cancel went with it. */
export function WhereSigned({ legend }: Readonly<{ legend: string }>) {
  return (
    <>
      <Choice
        name="signedWhere"
        legend={legend}
        hint="At their home it can be cancelled for three business days; no clay is cut before. Ask a lawyer."
        layout="down"
        options={staffPlaces.map((value) => ({ value, label: signedPlaceWords[value] }))}
        defaultValue="gallery"
      />
      <Choice
        name="cancelNotice"
        kind="tick"
        legend="The right to cancel"
        options={[
          {
            value: 'yes',
            label: 'Both papers of the right to cancel were handed over',
            hint: 'When it is signed at their home.',
          },
        ]}
      />
    </>
  );
}
