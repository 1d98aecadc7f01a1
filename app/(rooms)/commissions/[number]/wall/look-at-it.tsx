import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import type { SurveyTold } from '@/lib/installation/reads/survey/told';
import { Folded } from '../../asking/folded';
import { PictureField } from '../../picture-field';
import { AboutCommission } from '../act-page';
import { keepWall } from './actions';
import { ObstacleRows } from './obstacle-rows';
import { PlaceQuestions, WayQuestions } from './place-questions';
import { MadeQuestions, StudQuestions } from './wall-questions';

type LookAtItProps = Readonly<{ sheet: Sheet; known: SurveyTold | null }>;

/** The form of a survey: whatever is not known stays open and shows as that. */
export function LookAtIt({ sheet, known }: LookAtItProps) {
  const unit = sheet.gallery.lengthUnit;
  return (
    <FormFrame action={keepWall} label="What the wall is like">
      <RequestKey />
      <AboutCommission sheet={sheet} />
      <input type="hidden" name="lengthUnit" value={unit} />
      <input type="hidden" name="seenVersion" value={known?.version ?? 0} />
      <MadeQuestions known={known} unit={unit} requestSays={sheet.request.wall} />
      <StudQuestions known={known} unit={unit} />
      <PlaceQuestions known={known} unit={unit} />
      <Folded
        title="On the wall and in it"
        about="doors, windows, outlets, switches, wires, pipes, mouldings"
        names={[]}
        open
      >
        <ObstacleRows obstacles={known?.obstacles ?? []} unit={unit} />
      </Folded>
      <WayQuestions known={known} unit={unit} />
      {known && known.pictures.length > 0 ? (
        <Choice
          name="keptPictures"
          kind="tick"
          legend="Pictures that stay"
          options={known.pictures.map(({ file, caption }, at) => ({
            value: file.id,
            label: caption || `picture ${at + 1}`,
          }))}
          defaultValue={known.pictures.map(({ file }) => file.id).join(',')}
        />
      ) : null}
      <PictureField
        name="pictures"
        label="Pictures"
        hint="The whole wall, each corner, outlets, the floor, doors, the turn of the stair."
        several
      />
      <Field
        name="surveyedOn"
        label="Looked at on"
        kind="day"
        width="short"
        defaultValue={sheet.telling.today}
      />
      <SubmitButton pendingText="Keeping it…">Keep it</SubmitButton>
    </FormFrame>
  );
}
