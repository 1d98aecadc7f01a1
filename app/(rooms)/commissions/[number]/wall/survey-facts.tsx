import { Facts, type Fact } from '@/app/ui/page/facts';
import { Caution } from '@/app/ui/page/caution';
import { Table } from '@/app/ui/figures/table';
import { Hung, Wall } from '@/app/ui/piece/piece-hanging';
import { Picture } from '@/app/ui/piece/picture';
import { shownPicture } from '@/lib/commissions/reads/picture';
import { yesNoWords } from '@/lib/commissions/rules/enquiry/words';
import { wallWords } from '@/lib/commissions/rules/words';
import type { SurveyTold } from '@/lib/installation/reads/survey/told';
import { formatLength, type LengthSystem } from '@/lib/units/rules';
import { studWoodWords } from '@/lib/walls/rules/fixings/screws';
import { obstacleNamed } from '@/lib/walls/rules/plan/wall';

type SurveyFactsProps = Readonly<{
  survey: SurveyTold;
  unit: LengthSystem;
  cautions: readonly string[];
}>;

/** A wall as somebody looked at it: what is known, what is on it, its pictures, what to mind. */
export function SurveyFacts({ survey, unit, cautions }: SurveyFactsProps) {
  return (
    <>
      {cautions.map((caution) => (
        <Caution key={caution}>{caution}</Caution>
      ))}
      <Facts facts={[...wallFacts(survey, unit), ...placeFacts(survey, unit)]} />
      <OnTheWall survey={survey} unit={unit} />
      <Pictures survey={survey} />
    </>
  );
}

function wallFacts(survey: SurveyTold, unit: LengthSystem): Fact[] {
  const length = (um: number | null) => (um === null ? null : formatLength(um, unit));
  const { wall, studSpacingUm, firstStudUm } = survey;
  const studs = [
    studSpacingUm === null ? null : `${formatLength(studSpacingUm, unit)} apart`,
    firstStudUm === null ? null : `the first ${formatLength(firstStudUm, unit)} from the left`,
    survey.studWood === null ? null : studWoodWords[survey.studWood],
    survey.steelGauge === null ? null : `${survey.steelGauge} gauge`,
  ].filter((known) => known !== null);
  return [
    { name: 'Made of', value: wall && wallWords[wall] },
    { name: 'Proved by', value: survey.provedHow || null },
    { name: 'Studs', value: studs.length > 0 ? studs.join(', ') : null },
    { name: 'Board or plaster before it', value: length(survey.coverUm) },
    { name: 'Wood built in', value: withWords(survey.hasBacking, survey.backing) },
    { name: 'Wide', value: length(survey.wallWidthUm) },
    { name: 'From floor to ceiling', value: length(survey.ceilingUm) },
    { name: 'Out of plumb or flat', value: length(survey.outOfPlumbUm) },
    { name: 'Furniture below, up to', value: length(survey.furnitureUm) },
    { name: 'Its middle was agreed at', value: length(survey.agreedMiddleUm) },
    {
      name: 'Wires and pipes looked for',
      value: withWords(survey.servicesSought, survey.services),
    },
  ];
}

function placeFacts(survey: SurveyTold, unit: LengthSystem): Fact[] {
  const { narrowWidthUm, narrowHeightUm } = survey;
  const narrow =
    narrowWidthUm === null
      ? null
      : [narrowWidthUm, narrowHeightUm ?? 0]
          .filter((um) => um > 0)
          .map((um) => formatLength(um, unit))
          .join(' wide, ');
  return [
    { name: 'Outdoors', value: yesNoWords(survey.isOutdoors) },
    { name: 'Freezes there', value: yesNoWords(survey.freezes) },
    { name: 'People below it', value: yesNoWords(survey.isOverPeople) },
    { name: 'The ground quakes', value: yesNoWords(survey.quakes) },
    { name: 'Heat, steam, splash', value: survey.heat || null },
    { name: 'The way in', value: survey.access || null },
    { name: 'Steps', value: survey.steps },
    { name: 'Narrowest place', value: narrow },
    { name: 'Lift in the house', value: survey.lift || null },
    { name: 'Floor', value: survey.floor || null },
    { name: 'Outlet near', value: yesNoWords(survey.hasOutlet) },
    { name: 'Who is there', value: survey.people || null },
    { name: 'The building asks for', value: survey.building || null },
    { name: 'Besides', value: survey.note || null, notKnown: 'nothing' },
  ];
}

function withWords(answer: boolean | null, words: string): string | null {
  const told = yesNoWords(answer);
  if (words === '') return told;
  return told === null ? words : `${told}: ${words}`;
}

function OnTheWall({ survey, unit }: Omit<SurveyFactsProps, 'cautions'>) {
  if (survey.obstacles.length === 0) return null;
  return (
    <Table
      caption="On the wall and in it, from its left end and from the floor"
      columns={[
        { name: 'What' },
        { name: 'From the left', figure: true },
        { name: 'From the floor', figure: true },
        { name: 'Wide', figure: true },
        { name: 'High', figure: true },
      ]}
      rows={survey.obstacles.map((one, at) => ({
        key: String(at),
        cells: [
          obstacleNamed(one),
          ...[one.leftUm, one.bottomUm, one.widthUm, one.heightUm].map((um) =>
            formatLength(um, unit),
          ),
        ],
      }))}
    />
  );
}

function Pictures({ survey }: Readonly<{ survey: SurveyTold }>) {
  if (survey.pictures.length === 0) return null;
  return (
    <Wall label="Pictures of the wall">
      {survey.pictures.map(({ file, caption }) => (
        <Hung key={file.id}>
          <Picture size="hung" {...shownPicture(file, caption || 'The wall')} />
        </Hung>
      ))}
    </Wall>
  );
}
