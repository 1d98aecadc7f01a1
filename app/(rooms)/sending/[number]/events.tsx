import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Section } from '@/app/ui/page/section';
import { Picture } from '@/app/ui/piece/picture';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import { isOpen } from '@/lib/sending/rules/way';
import { eventWords } from '@/lib/sending/rules/words';
import css from '../sending.module.css';

/** What became of a shipment, in the order in which it happened. */
export function Events({ shipment }: Readonly<{ shipment: ShipmentTold }>) {
  const { number, events, stage, madeBy } = shipment;
  const here = `/sending/${number}/step`;
  return (
    <Section
      title="What became of it"
      act={
        stage === 'called_off' ? null : (
          <span className={css['acts']}>
            <ButtonLink href={`${here}/noted`} variant="quiet">
              Note something
            </ButtonLink>
            {isOpen(events) ? (
              <ButtonLink href={`${here}/called_off`} variant="danger">
                Call it off
              </ButtonLink>
            ) : null}
          </span>
        )
      }
    >
      <ol className={css['events']}>
        <li>Begun by {madeBy}</li>
        {events.map((event) => (
          <li key={`${event.kind}-${event.at.toISOString()}`}>
            <DayText day={event.on} />, {event.by}: {eventWords[event.kind]}
            {event.tracking === '' ? null : `, number ${event.tracking}`}
            {event.takenBy === '' ? null : `, taken by ${event.takenBy}`}
            {event.words === '' ? null : <span className={css['said']}>. {event.words}</span>}
            {event.drawingId ? (
              <Picture
                src={`/files/${event.drawingId}`}
                alt={`Signature of ${event.takenBy}`}
                width={720}
                height={320}
                size="thumb"
              />
            ) : null}
          </li>
        ))}
      </ol>
    </Section>
  );
}
