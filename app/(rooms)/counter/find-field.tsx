'use client';

import { useRouter } from 'next/navigation';
import {
  useEffect,
  useEffectEvent,
  useRef,
  useState,
  useTransition,
  type SubmitEvent,
} from 'react';
import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import css from './counter.module.css';

type FindFieldProps = Readonly<{
  find: string;
  /** The slip and the collector as the address keeps them; they travel with what is found. */
  slip: string;
  collectorId: string;
}>;

const lettersLeast = 3;
const pauseMs = 160;

/**
 * The one field of the counter: letters find, a whole SKU or a scanned code goes onto the slip.
 *
 * What is scanned while the page is still on its way waits its turn, so that none is lost. Enter
 * in the empty field goes to the money. Keys struck anywhere else on the page land here.
 */
export function FindField({ find, slip, collectorId }: FindFieldProps) {
  const [first] = useState(find);
  const [pending, start] = useTransition();
  const form = useRef<HTMLFormElement>(null);
  const waiting = useRef<string[]>([]);
  const last = useRef({ sent: '', busy: false });
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const router = useRouter();

  const go = (text: string, typing: boolean) => {
    last.current = { sent: text, busy: true };
    const address = addressOf({ slip, for: collectorId, find: text }, typing);
    start(() => router[typing ? 'replace' : 'push'](address, { scroll: false }));
  };

  // When a page has come, its slip is the true one: only now may the next scan be added to it.
  const sendNext = useEffectEvent(() => {
    const next = waiting.current.shift();
    if (next !== undefined) go(next, false);
  });
  useEffect(() => {
    if (pending) return;
    last.current.busy = false;
    sendNext();
  }, [pending]);
  const seen = useRef(slip);
  useEffect(() => {
    if (seen.current !== slip) emptyField(form.current, last.current.sent);
    seen.current = slip;
    returnTo(form.current);
  }, [slip]);
  useEffect(() => catchKeys(form.current), []);
  useEffect(() => () => clearTimeout(timer.current), []);

  const submit = (event: SubmitEvent<HTMLFormElement>) => {
    event.preventDefault();
    clearTimeout(timer.current);
    const input = inputOf(form.current);
    const text = input?.value.trim() ?? '';
    if (text === '') return goToMoney();
    input?.select();
    if (pending || last.current.busy) waiting.current.push(text);
    else go(text, false);
  };
  const typed = () => {
    clearTimeout(timer.current);
    const text = inputOf(form.current)?.value.trim() ?? '';
    if (text.length < lettersLeast && text !== '') return;
    timer.current = setTimeout(() => go(text, true), pauseMs);
  };

  return (
    <form
      ref={form}
      action="/counter"
      role="search"
      className={css['find']}
      onSubmit={submit}
      onInput={typed}
      aria-busy={pending}
    >
      <input type="hidden" name="slip" value={slip} />
      <input type="hidden" name="for" value={collectorId} />
      <Field
        name="find"
        label="Find a piece"
        hint="Scan its tag, or type its number or three letters of its name."
        kind="search"
        size="counter"
        defaultValue={first}
        autoComplete="off"
        autoFocus
      />
      <Button type="submit" variant="quiet" size="counter">
        Find
      </Button>
    </form>
  );
}

function addressOf(asked: Record<string, string>, typing: boolean): string {
  return `/counter?${new URLSearchParams(typing ? { ...asked, typing: '1' } : asked)}`;
}

function inputOf(form: HTMLFormElement | null): HTMLInputElement | null {
  return form?.querySelector('input[name="find"]') ?? null;
}

/** The cursor comes back, except where that would bring up a phone's keyboard. */
function returnTo(form: HTMLFormElement | null): void {
  if (matchMedia('(hover: hover)').matches) inputOf(form)?.focus({ preventScroll: true });
}

/** Takes out what is on the slip now; what is being scanned meanwhile stays. */
function emptyField(form: HTMLFormElement | null, sent: string): void {
  const input = inputOf(form);
  if (input?.value.trim() === sent) input.value = '';
}

function goToMoney(): void {
  const money = document.querySelector<HTMLElement>('[data-money] input[type="radio"]:checked');
  const given = document.querySelector<HTMLElement>('[data-money] input[name="given"]');
  (given?.offsetParent ? given : money)?.focus();
}

function catchKeys(form: HTMLFormElement | null): () => void {
  const caught = (event: KeyboardEvent) => {
    const { key, ctrlKey, metaKey, altKey, target } = event;
    if (key.length !== 1 || key === ' ' || ctrlKey || metaKey || altKey) return;
    if (target instanceof HTMLElement && target.matches('input, textarea, select')) return;
    inputOf(form)?.focus();
  };
  document.addEventListener('keydown', caught);
  return () => document.removeEventListener('keydown', caught);
}
