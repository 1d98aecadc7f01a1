import { addDays, type Day } from '@/lib/dates/rules';
import { drawAll } from './commission-pictures';
import { playStory, type Stage } from './commission-play';
import { asked } from './scenario/commissions-asked';
import { made } from './scenario/commissions-made';
import { stages, type CommissionStory } from './scenario/commission-story';
import type { SetUp } from './set-up';

/** Plays each commission of the scenario from the request to where it has come. */
export async function playCommissions(demo: {
  today: Day;
  setUp: SetUp;
  collectors: ReadonlyMap<string, string>;
}): Promise<void> {
  const stories = [...asked, ...made].sort((a, b) => b.askedDaysAgo - a.askedDaysAgo);
  for (const story of stories) {
    const pictures = await drawAll(story);
    await playStory({ ...demo, story, pictures, dayOfStage: dayOfStage(story, demo.today) });
  }
}

/** Stages are spread evenly from the day of the request; the last one was a little while ago. */
function dayOfStage(story: CommissionStory, today: Day): (stage: Stage) => Day {
  const reached = stages.indexOf(story.until);
  return (stage) => {
    const share = stages.indexOf(stage) / (reached + 1);
    return addDays(today, -Math.max(1, Math.round(story.askedDaysAgo * (1 - share))));
  };
}
