import { text } from 'node:stream/consumers';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { findWorking, workings } from './list';
import type { NamedWorking } from './working';

/** What the command was told no for; every one of them ends it with the same number. */
const refusedExit = 2;

const answer = await workOut(process.argv.slice(2));
if (answer.ok) {
  process.stdout.write(`${answer.value.join('\n')}\n`);
} else {
  process.stderr.write(`${answer.refusal}\n`);
  process.exitCode = refusedExit;
}

async function workOut(words: readonly string[]): Promise<Result<string[], string>> {
  const names = workings.map((working) => working.name).join(', ');
  const [name, given, ...more] = words;
  if (name === undefined) return refuse(`Name what to work out: ${names}`);
  const working = findWorking(name);
  if (!working) return refuse(`${oneLine(name)}: must be one of ${names}`);
  if (given === undefined || more.length > 0) {
    return refuse(`${name}: write its JSON behind it in quotes, or - to read it from the input`);
  }
  return given === '-' ? answerAll(working, await text(process.stdin)) : answerAll(working, given);
}

async function answerAll(working: NamedWorking, given: string): Promise<Result<string[], string>> {
  const whole = await readJson(given);
  if (whole.ok) return answerLine(working, whole, '');

  const lines = given.split('\n').map((line, place) => ({ line, number: place + 1 }));
  const written = lines.filter(({ line }) => line.trim() !== '');
  if (written.length === 0) return refuse('input: must be a JSON object, and nothing came');
  if (written.length === 1) return whole;

  const answers: string[] = [];
  for (const { line, number } of written) {
    const answered = answerLine(working, await readJson(line), `line ${number}: `);
    if (!answered.ok) return answered;
    answers.push(...answered.value);
  }
  return ok(answers);
}

function answerLine(
  working: NamedWorking,
  read: Result<unknown, string>,
  place: string,
): Result<string[], string> {
  const answered = read.ok ? working.answer(read.value) : read;
  if (!answered.ok) return refuse(`${place}${answered.refusal}`);
  return ok([JSON.stringify(answered.value)]);
}

/** Asynchronous so that a text which is no JSON is a rejection to answer, not a throw to catch. */
async function readJson(given: string): Promise<Result<unknown, string>> {
  const parse = Promise.resolve(given).then((line): unknown => JSON.parse(line));
  return parse.then(
    (value) => ok(value),
    () => refuse('input: must be one JSON object, with its keys in double quotes'),
  );
}

function oneLine(word: string): string {
  return word.replaceAll(/\s+/g, ' ').slice(0, 60);
}
