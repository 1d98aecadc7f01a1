import { forecast } from '@/lib/studio/rules/forecast/forecast';
import { mix } from '@/lib/studio/rules/forecast/chance';
import { openJobs, today, twoKilns } from '../rules/studio/forecast/a-load';
import { openTrials, middleTrials, shareWithin } from '../rules/studio/forecast/trials';

// 10,000 futures of 100 open jobs on one core, beside a plain loop of 100 million mixes of a word, each
// waiting for the one before; and on simulated studios, how many truths lie within the first 80 of 100.

const futures = Number(process.argv[2] ?? 10_000);
const studios = Number(process.argv[3] ?? 1_000);
const secondsMost = 2;

const jobs = openJobs(100, 1);
const course = { futures, seed: 5, sightDays: 730 };
forecast(twoKilns, jobs, today, { ...course, futures: 200 });
const yardstick = Math.min(mixing(), mixing(), mixing());
const used = Math.min(
  ...[1, 2, 3].map(() => seconds(() => forecast(twoKilns, jobs, today, course))),
);
console.log(
  `${futures.toLocaleString('en-US')} futures of ${jobs.length} open jobs: ${hundredths(used)} s of ` +
    `one core, of ${secondsMost} s; ${hundredths(used / yardstick)} times a plain loop of ` +
    `100 million mixes (${hundredths(yardstick)} s).`,
);

for (const [what, trials] of [
  ['as they stand', openTrials(studios)],
  ['after some weeks', middleTrials(studios)],
] as const) {
  const shares = [50, 80, 95].map((ofHundred) => {
    return `${Math.round(shareWithin(trials, ofHundred) * 1_000) / 10} of ${ofHundred}`;
  });
  console.log(`Simulated studios, jobs ${what}, truths within: ${shares.join(', ')}.`);
}

/** Processor time, so that what else runs on the machine counts little. */
function seconds(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1_000_000;
}

function mixing(): number {
  return seconds(() => {
    let word = 1;
    for (let at = 0; at < 100_000_000; at += 1) word = mix(word ^ at) | 0;
    return word;
  });
}

function hundredths(figure: number): number {
  return Math.round(figure * 100) / 100;
}
