import { ButtonLink } from '@/app/ui/button/button';
import { DayText, InstantText } from '@/app/ui/figures/day-text';
import { Caution } from '@/app/ui/page/caution';
import { Facts, type Fact } from '@/app/ui/page/facts';
import { Columns, Section } from '@/app/ui/page/section';
import { Working } from '@/app/ui/page/working';
import { Hung, Wall } from '@/app/ui/piece/piece-hanging';
import { Picture } from '@/app/ui/piece/picture';
import type { RequestPicture } from '@/lib/commissions/reads/papers';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { placeCautions, weightEstimate } from '@/lib/commissions/rules/enquiry/cautions';
import { exposureWords, wallWords } from '@/lib/commissions/rules/words';
import { formatCents } from '@/lib/money/rules';
import { formatWeight } from '@/lib/units/rules';
import { sizeWords } from '../size-words';
import css from '../commissions.module.css';

type RequestLinesProps = Readonly<{ sheet: Sheet; pictures: readonly RequestPicture[] }>;

/** What was asked for, what is not known yet, what to mind, and the pictures that came with it. */
export function RequestLines({ sheet, pictures }: RequestLinesProps) {
  const { request, gallery, number, acts } = sheet;
  const system = gallery.lengthUnit;
  const weight = weightEstimate(request, system);
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
            <Facts facts={requestFacts(sheet)} />
            {placeCautions(request, system).map((caution) => (
              <Caution key={caution}>{caution}</Caution>
            ))}
            {weight ? (
              <Working
                title={`It will weigh about ${formatWeight(weight.weightG, system === 'in' ? 'lb' : 'kg')}`}
                {...weight}
              />
            ) : null}
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

function requestFacts({ request, gallery, telling }: Sheet): Fact[] {
  const { wish, avoid, colours, room, wall, exposure, siteAddress, wishedOn } = request;
  return [
    { name: 'They wish', value: words(wish) },
    { name: 'They do not want', value: words(avoid) },
    { name: 'Colours to go with', value: words(colours) },
    { name: 'Room', value: room },
    { name: 'The wall is', value: wall && wallWords[wall] },
    { name: 'It will live', value: exposure && exposureWords[exposure] },
    { name: 'Size', value: sizeWords(request, gallery.lengthUnit) },
    { name: 'House', value: siteAddress },
    { name: 'Wished for by', value: wishedOn && <DayText day={wishedOn} style="long" /> },
    ...(telling.seesMoney ? [{ name: 'They think of', value: budget(request) }] : []),
  ];
}

function words(said: string) {
  return said === '' ? null : <span className={css['said']}>{said}</span>;
}

function budget({ budgetFromCents: from, budgetToCents: to }: Sheet['request']): string | null {
  if (from !== null && to !== null) return `${formatCents(from)} to ${formatCents(to)}`;
  if (from !== null) return `from ${formatCents(from)}`;
  return to === null ? null : `up to ${formatCents(to)}`;
}
