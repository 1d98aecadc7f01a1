'use client';

import { useRouter } from 'next/navigation';
import { useActionState, useEffect, useRef, useState, type SubmitEvent } from 'react';
import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import { freshKey } from '@/app/ui/form/fresh-key';
import { idle, type FormState } from '@/app/ui/form-state';
import { Notice } from '@/app/ui/page/notice';
import { scan } from './actions';
import { counterHref } from './address';
import css from './counter.module.css';
import { ScanQueue } from './scan-queue';

type FindFieldProps = Readonly<{
  find: string;
  /** The slip that is being written; null before the first piece. */
  slipId: string | null;
  /** Made for the slip that the first piece opens. */
  newSlipId: string;
  requestKey: string;
  /** Changes with every change of the slip. */
  stamp: string;
}>;

const lettersLeast = 3;
const pauseMs = 160;

/**
 * The one field of the counter: letters find, a whole SKU or a scanned code goes onto the slip.
 *
 * What is scanned while a page is still on its way waits its turn, each with its own key and all for
 * the same slip, so that none is lost. Enter in the empty field goes to the money. Keys struck
 * anywhere else on the page land here.
 */
export function FindField(props: FindFieldProps) {
  const { find, slipId, newSlipId, requestKey } = props;
  const [first] = useState(find);
  const { form, refusal, submit, lookSoon } = useFinding(props);
  return (
    <form
      ref={form}
      action={submit.plain}
      role="search"
      className={css['find']}
      onSubmit={submit.here}
      onInput={lookSoon}
    >
      <input type="hidden" name="slipId" value={slipId ?? newSlipId} />
      <input type="hidden" name="requestKey" value={requestKey} />
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
      {refusal === null ? null : (
        <div className={css['find-answer']}>
          <Notice kind="refused">{refusal}</Notice>
        </div>
      )}
    </form>
  );
}

function useFinding({ slipId, newSlipId, stamp }: FindFieldProps) {
  const [state, send] = useActionState(scan, idle);
  const [told, setTold] = useState<string | null>(null);
  const form = useRef<HTMLFormElement>(null);
  const opening = useRef<string>(null);
  const sent = useRef('');
  const seen = useRef(stamp);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const [queue] = useState(() => new ScanQueue());
  const router = useRouter();

  useEffect(() => {
    if (slipId !== null) opening.current = null;
  }, [slipId]);
  useEffect(() => {
    if (seen.current !== stamp) emptyField(form.current, sent.current);
    seen.current = stamp;
    returnTo(form.current);
  }, [stamp]);
  useEffect(() => catchKeys(form.current), []);
  useEffect(() => () => clearTimeout(timer.current), []);

  const answered = (answer: FormState) => {
    setTold(answer.kind === 'refused' ? answer.message : null);
    const href = answer.kind === 'done' ? answer.href : undefined;
    if (href !== undefined && href !== location.pathname + location.search) {
      router.replace(href, { scroll: false });
    }
  };
  const here = (event: SubmitEvent<HTMLFormElement>) => {
    event.preventDefault();
    clearTimeout(timer.current);
    const input = inputOf(form.current);
    const text = input?.value.trim() ?? '';
    if (text === '') return goToMoney();
    input?.select();
    sent.current = text;
    // Until the page knows the slip that a first scan opens, every scan after it goes to that one.
    opening.current ??= newSlipId;
    queue.send(scanOf(text, slipId ?? opening.current), answered);
  };
  const lookSoon = () => {
    clearTimeout(timer.current);
    const text = inputOf(form.current)?.value.trim() ?? '';
    if (queue.isBusy || (text.length < lettersLeast && text !== '')) return;
    const more = { find: text, typing: '1' };
    timer.current = setTimeout(() => {
      if (queue.isBusy) return;
      sent.current = text;
      router.replace(counterHref(slipId, more), { scroll: false });
    }, pauseMs);
  };
  const refusal = state.kind === 'refused' ? state.message : told;
  return { form, refusal, lookSoon, submit: { plain: send, here } };
}

function scanOf(find: string, slipId: string): FormData {
  const scanned = new FormData();
  scanned.set('find', find);
  scanned.set('here', '1');
  scanned.set('slipId', slipId);
  scanned.set('requestKey', freshKey());
  return scanned;
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
