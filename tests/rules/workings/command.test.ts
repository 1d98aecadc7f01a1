import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../../../', import.meta.url));

function workOut(words: readonly string[], input = '') {
  const node = ['--conditions=react-server', '--import', 'tsx', 'lib/workings/work-out.ts'];
  const ran = spawnSync(process.execPath, [...node, ...words], {
    cwd: root,
    input,
    encoding: 'utf8',
  });
  return { exit: ran.status, said: ran.stdout, complained: ran.stderr };
}

describe('the command that works one out', () => {
  test('answers one object on one line', () => {
    const { exit, said, complained } = workOut(['check-digit', '{"digits":"629104150021"}']);
    expect([exit, complained, said.endsWith('}\n'), said.trim().includes('\n')]).toEqual([
      0,
      '',
      true,
      false,
    ]);
    expect(JSON.parse(said)).toMatchObject({ checkDigit: 3, caution: null });
  });

  test('says nothing but the answer when npm runs it', () => {
    const words = ['run', '-s', 'work-out', '--', 'clay-size'];
    const given = '{"firedMm":254,"shrinkagePercent":"8"}';
    const ran = spawnSync('npm', [...words, given], { cwd: root, encoding: 'utf8' });
    expect(ran.status).toBe(0);
    expect(JSON.parse(ran.stdout)).toMatchObject({ wetMm: 276.087 });
  });

  test('reads its input, one object a line, and answers in the same order', () => {
    const lines = '{"digits":"629104150021"}\n\n{"digits":"03600024145"}\n';
    const { exit, said } = workOut(['check-digit', '-'], lines);
    const answers = said
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as unknown);
    expect(exit).toBe(0);
    expect(answers).toMatchObject([{ checkDigit: 3 }, { checkDigit: 7 }]);
  });

  test('reads one object that is written over several lines', () => {
    const { exit, said } = workOut(['check-digit', '-'], '{\n  "digits": "629104150021"\n}\n');
    expect([exit, JSON.parse(said)]).toMatchObject([0, { checkDigit: 3 }]);
  });
});

describe('what the command refuses: nothing on its output, one line, exit 2', () => {
  const two = '{"digits":"629104150021"}\n{"digits":"12"}\n';
  test.each<[string, string[], string, RegExp]>([
    ['a key that is wrong', ['check-digit', '{"digits":"1"}'], '', /^digits: must be 7/],
    ['a key it does not know', ['check-digit', '{"digit":"1"}'], '', /digit: is not asked for/],
    ['what is no JSON', ['check-digit', '{digits:1}'], '', /^input: must be one JSON object/],
    ['a name it does not know', ['gold\nmaking', '{}'], '', /^gold making: must be one of money-/],
    ['no name', [], '', /^Name what to work out: money-split, /],
    ['no input', ['check-digit'], '', /^check-digit: write its JSON/],
    ['too many words', ['check-digit', '{}', '{}'], '', /^check-digit: write its JSON/],
    ['an empty input', ['check-digit', '-'], ' \n', /^input: .* nothing came/],
    ['one bad line of two, by its number', ['check-digit', '-'], two, /^line 2: digits: must/],
    ['a broken line of two', ['check-digit', '-'], '{"digits":\n{}\n', /^line 1: input: must/],
  ])('%s', (...[, words, input, line]) => {
    const { exit, said, complained } = workOut(words, input);
    expect([exit, said]).toEqual([2, '']);
    expect(complained).toMatch(line);
    expect(complained.trimEnd()).not.toContain('\n');
  });
});
