import { expect, test } from 'vitest';
import { z } from 'zod';
import { answer, doorAction, refused } from '@/app/form-action';
import { idle } from '@/app/ui/form-state';
import { refuse, ok } from '@/lib/platform/result';

const schema = z.strictObject({
  requestKey: z.uuid(),
  title: z.string().trim().min(1),
  colours: z.array(z.string()).max(2).default([]),
  picture: z.file().optional(),
  password: z.string().min(12).optional(),
  mail: z.email().optional(),
});
const requestKey = '0190f6a0-0000-7000-8000-000000000001';

type Read = z.output<typeof schema>;

async function send(fill: (form: FormData) => void) {
  const seen: Read[] = [];
  const action = doorAction(schema, async (_at, input) => {
    seen.push(input);
    return Promise.resolve({ kind: 'done', message: 'Kept.' });
  });
  const form = new FormData();
  form.set('requestKey', requestKey);
  form.set('title', ' Herons ');
  fill(form);
  return { state: await action(idle, form), seen };
}

test('a form that reads well is acted on once, with what the schema made of it', async () => {
  const { state, seen } = await send(() => undefined);
  expect(state).toEqual({ kind: 'done', message: 'Kept.' });
  expect(seen).toEqual([{ requestKey, title: 'Herons', colours: [] }]);
});

test('a name that comes more than once becomes a list', async () => {
  const { seen } = await send((form) => {
    form.append('colours', 'celadon');
    form.append('colours', 'ash');
  });
  expect(seen[0]?.colours).toEqual(['celadon', 'ash']);
});

test('a file field left empty is left out, a chosen file stays a file', async () => {
  const left = await send((form) => form.append('picture', new File([], '')));
  expect(left.seen[0]).not.toHaveProperty('picture');
  const chosen = await send((form) => form.append('picture', new File(['x'], 'wall.jpg')));
  expect(chosen.seen[0]?.picture?.size).toBe(1);
});

test('what the framework adds to a form without scripts is not ours to refuse', async () => {
  const { state } = await send((form) => form.append('$ACTION_REF_1', ''));
  expect(state.kind).toBe('done');
});

test('faults are told at their fields, and everything typed is kept but the password', async () => {
  const { state, seen } = await send((form) => {
    form.set('title', '  ');
    form.set('password', 'short');
    form.set('mail', 'wren');
  });
  expect(seen).toEqual([]);
  expect(state).toEqual({
    kind: 'refused',
    message: 'Not yet: please look again at what is marked below.',
    fields: {
      title: 'Please fill this in.',
      password: 'Write at least 12 characters.',
      mail: 'Write a mail address, such as wren@example.org.',
    },
    submitted: { requestKey, title: '  ', mail: 'wren' },
  });
});

test.each<[string, (form: FormData) => void]>([
  ['no key', (form) => form.delete('requestKey')],
  ['a key that is none', (form) => form.set('requestKey', '1')],
  ['a field nobody knows', (form) => form.set('priceCents', '1')],
])('%s is told at the head of the form, since no field shows it', async (_label, fill) => {
  const { state, seen } = await send(fill);
  expect(seen).toEqual([]);
  expect(state).toMatchObject({ kind: 'refused' });
  expect(state.kind === 'refused' && state.message).not.toContain('marked below');
});

test('a refusal becomes its sentence, a value becomes what was done', () => {
  const words = (refusal: { code: 'sold' }) => `It is ${refusal.code}.`;
  const done = (value: number) => ({ kind: 'done', message: `${value} kept` }) as const;
  expect(answer(refuse({ code: 'sold' } as const), words, done)).toEqual(refused('It is sold.'));
  expect(answer(ok(3), words, done)).toEqual({ kind: 'done', message: '3 kept' });
});
