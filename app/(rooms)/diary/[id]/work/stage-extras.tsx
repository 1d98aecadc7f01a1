'use client';

import { Caution } from '@/app/ui/page/caution';
import { planQuestionOf, planQuestionWords } from '@/lib/installation/rules/work/before-signing';
import type { WorkStage } from '@/lib/installation/rules/work/stages';
import { useWorkDay } from './day-shown';
import { SayWhy } from './say-why';
import { TakePicture } from './take-picture';
import { WeighIt } from './weigh-it';

/** What belongs to a part of the day besides its ticks. */
export function StageExtras({ stage }: Readonly<{ stage: WorkStage }>) {
  const { day, here } = useWorkDay();
  if (day.handOverFacts === null) return null;
  const isHanging = day.kind === 'hanging';
  if (stage === 'before') return <WeighIt />;
  if (stage === 'there' && isHanging) return <AboutThePlan />;
  if (stage === 'fixings' && isHanging) {
    return (
      <>
        <TakePicture
          of="fixings"
          label="A picture of the fixings"
          hint="Before the piece covers them, with a tape in the picture: in ten years it is the only evidence."
        />
        {here.hasFixingsPicture ? null : (
          <SayWhy item="no_fixings_picture" label="Why there is no picture of the fixings" />
        )}
      </>
    );
  }
  if (stage !== 'piece') return null;
  return (
    <TakePicture
      of="in_place"
      label="A picture in its place"
      hint="No house number, no children, and no other art without leave."
    />
  );
}

/** What is open about the plan, and the word on it. */
function AboutThePlan() {
  const { day, here } = useWorkDay();
  const question = planQuestionOf(day.plan, here.isWeighed ? here.weightG : null);
  if (!question) return null;
  return (
    <>
      <Caution>{planQuestionWords[question]}</Caution>
      <SayWhy item="plan_word" label="What holds it, and who says so" />
    </>
  );
}
