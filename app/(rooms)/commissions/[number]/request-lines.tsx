import { ButtonLink } from '@/app/ui/button/button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Caution } from '@/app/ui/page/caution';
import { Facts } from '@/app/ui/page/facts';
import { Columns, Section } from '@/app/ui/page/section';
import { Working } from '@/app/ui/page/working';
import { Hung, Wall } from '@/app/ui/piece/piece-hanging';
import { Picture } from '@/app/ui/piece/picture';
import type { RequestPicture } from '@/lib/commissions/reads/papers';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { placeCautions, weightEstimate } from '@/lib/commissions/rules/enquiry/cautions';
import { stillToAsk, toAskSentence } from '@/lib/commissions/rules/enquiry/to-ask';
import { formatWeight } from '@/lib/units/rules';
import { requestGroups } from './request-facts';
import asking from '../asking/asking.module.css';
import css from '../commissions.module.css';

type RequestLinesProps = Readonly<{ sheet: Sheet; pictures: readonly RequestPicture[] }>;

/** What was asked for, what is not known yet, what to mind, and the pictures that came with it. */
export function RequestLines({ sheet, pictures }: RequestLinesProps) {
  const { request, gallery, number, acts, telling } = sheet;
  const system = gallery.lengthUnit;
  const weight = weightEstimate(request, system);
  const toAsk = toAskSentence(stillToAsk(request));
  const { currency, seesMoney } = telling;
  const groups = requestGroups({ request, lengthUnit: system, currency, seesMoney });
  return (
    <Section
      title="The request"
      id="request"
      lead={
        <>
          Taken down by {request.takenBy},{' '}
          <InstantText at={request.askedAt} zone={gallery.timeZone} />.
        </>
      }
      act={
        <span className={css['acts']}>
          {acts.has('request') ? (
            <ButtonLink href={`/commissions/${number}/request`} variant="quiet">
              Write down what is known now
            </ButtonLink>
          ) : null}
          {acts.has('pictures') ? (
            <ButtonLink href={`/commissions/${number}/pictures`} variant="quiet">
              Add pictures
            </ButtonLink>
          ) : null}
        </span>
      }
    >
      <Columns
        wide={
          <>
            {toAsk ? <p className={css['quiet']}>{toAsk}</p> : null}
            {placeCautions(request, system).map((caution) => (
              <Caution key={caution}>{caution}</Caution>
            ))}
            {weight ? (
              <Working
                title={`It will weigh about ${formatWeight(weight.weightG, system === 'in' ? 'lb' : 'kg')}`}
                {...weight}
              />
            ) : null}
            <div className={asking['told']}>
              {groups.map(({ title, facts }) => (
                <div key={title}>
                  <h3>{title}</h3>
                  <Facts facts={facts} />
                </div>
              ))}
            </div>
          </>
        }
        beside={<RequestPictures pictures={pictures} />}
      />
    </Section>
  );
}

function RequestPictures({ pictures }: Readonly<{ pictures: readonly RequestPicture[] }>) {
  if (pictures.length === 0) {
    return <p className={css['quiet']}>No pictures came with it yet.</p>;
  }
  return (
    <Wall label="Pictures of the request" spacing="close">
      {pictures.map(({ id, caption, ...picture }) => (
        <Hung key={id}>
          <figure>
            <Picture {...picture} size="hung" />
            {caption ? <figcaption className={css['quiet']}>{caption}</figcaption> : null}
          </figure>
        </Hung>
      ))}
    </Wall>
  );
}
