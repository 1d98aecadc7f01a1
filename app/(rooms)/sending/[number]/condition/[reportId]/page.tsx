import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { SpotMarker } from '@/app/ui/spots/spot-marker';
import { SpotPicture } from '@/app/ui/spots/spot-picture';
import { requireActor } from '@/lib/access/reads';
import { formatDay } from '@/lib/dates/rules';
import type { ViewTold } from '@/lib/sending/reads/told';
import { conditionMost, whenWords } from '@/lib/sending/rules/condition';
import { marksAction } from '../../../actions';
import { readShipmentOf, shipmentName, type ShipmentAddress } from '../../../read-shipment';
import css from '../../../sending.module.css';

export const metadata: Metadata = { title: 'How it looked' };

/** A condition report: its words, its pictures with their marks, and a place to set more of them. */
export default async function ConditionPage({ params }: ShipmentAddress<{ reportId: string }>) {
  const actor = await requireActor('sending.do');
  const shipment = await readShipmentOf(actor, params);
  const { reportId } = await params;
  const report = shipment.reports.find(({ id }) => id === reportId);
  if (!report) notFound();
  const { when, on, by, words, views } = report;
  return (
    <>
      <PageHead
        title={`How it looked ${whenWords[when]}`}
        back={{ href: `/sending/${shipment.number}`, name: shipmentName(shipment) }}
        lead={`${formatDay(on, 'long')}, looked at by ${by}.`}
      >
        <ButtonLink
          href={`/sending/${shipment.number}/condition/${report.id}/pdf`}
          download
          size="counter"
        >
          Print or keep as PDF
        </ButtonLink>
      </PageHead>
      <p className={css['words']}>{words}</p>
      {views.length === 0 ? <p>No picture was taken.</p> : null}
      <div className={css['views']}>
        {views.map((view, at) => (
          <View key={view.id} view={view} number={at + 1} />
        ))}
      </div>
    </>
  );
}

function View({ view, number }: Readonly<{ view: ViewTold; number: number }>) {
  const picture = {
    ...{ src: `/files/${view.fileId}`, alt: `Picture ${number} of the piece` },
    ...{ width: view.width, height: view.height },
  };
  const spots = view.marks.map(({ x, y, words }) => ({ xPermille: x, yPermille: y, words }));
  const left = Math.min(conditionMost.marksAtOnce, conditionMost.marks - spots.length);
  return (
    <Section title={`Picture ${number}`}>
      <div className={css['view']}>
        <SpotPicture picture={picture} spots={spots} label={`Marks on picture ${number}`} />
        {left > 0 ? (
          <details>
            <summary>Set marks on it</summary>
            <FormFrame action={marksAction} label={`Marks on picture ${number}`}>
              <RequestKey />
              <input type="hidden" name="viewId" value={view.id} />
              <SpotMarker
                picture={picture}
                most={left}
                lead="Choose a number, touch the picture where it is, and write what is seen there."
              />
              <SubmitButton>Keep the marks</SubmitButton>
            </FormFrame>
          </details>
        ) : null}
      </div>
    </Section>
  );
}
