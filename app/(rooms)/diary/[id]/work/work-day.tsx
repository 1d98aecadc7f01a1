'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useMemo, useRef, useState } from 'react';
import { Section } from '@/app/ui/page/section';
import { dayHere } from '@/lib/installation/rules/work/on-device';
import { handsOver } from '@/lib/installation/rules/work/before-signing';
import { stageTitles, workStages } from '@/lib/installation/rules/work/stages';
import { WorkDayContext, type DayShown } from './day-shown';
import { forgetPage, keepPage, type PageKept } from './kept/keep-page';
import { useOutbox } from './kept/use-outbox';
import { NotSent } from './not-sent';
import { Notes } from './notes';
import { OwnersWord } from './owners-word';
import { SignIt } from './sign-it';
import { Snags } from './snags';
import { StageExtras } from './stage-extras';
import { Ticks } from './ticks';

/**
 * The part of a work order that is done on the day: ticks, weight, pictures, snags, the signature.
 * Everything is kept on the device first, and sent from there.
 */
export function WorkDay({ day }: Readonly<{ day: DayShown }>) {
  const { outbox, view } = useOutbox(day.id);
  const here = useMemo(() => dayHere(day, view.kept), [day, view.kept]);
  const today = useMemo(() => ({ day, here, outbox, view }), [day, here, outbox, view]);
  const opens = useKeptPage(day, view.emptied);
  const stages = workStages.filter((stage) => day.items.some((item) => item.stage === stage));
  const isHandedOver = handsOver(day.kind) && day.handOverFacts !== null;
  if (day.isCalledOff) {
    return (
      <WorkDayContext.Provider value={today}>
        <NotSent opens={opens} />
      </WorkDayContext.Provider>
    );
  }
  return (
    <WorkDayContext.Provider value={today}>
      <NotSent opens={opens} />
      {day.isSigned ? null : (
        <>
          <OwnersWord />
          {stages.map((stage) => (
            <Section key={stage} title={stageTitles[stage]} id={stage}>
              <Ticks stage={stage} />
              <StageExtras stage={stage} />
            </Section>
          ))}
        </>
      )}
      {day.handOverFacts ? <Snags /> : null}
      <Notes />
      {isHandedOver && !day.isSigned ? <SignIt /> : null}
    </WorkDayContext.Provider>
  );
}

/**
 * Keeps the page on the device while the day is open, anew after everything was taken in, and
 * forgets it when it was signed or called off.
 */
function useKeptPage({ id, isSigned, isCalledOff }: DayShown, emptied: number): PageKept | null {
  const router = useRouter();
  const [opens, setOpens] = useState<PageKept | null>(null);
  const seen = useRef(emptied);
  const isOver = isSigned || isCalledOff;
  useEffect(() => {
    let isHere = true;
    const path = `/diary/${id}/work`;
    const keep = async () => {
      if (isOver) return forgetPage(path);
      const kept = await keepPage(path);
      if (isHere) setOpens(kept);
    };
    if (emptied !== seen.current) router.refresh();
    seen.current = emptied;
    void keep();
    return () => {
      isHere = false;
    };
  }, [id, isOver, emptied, router]);
  return opens;
}
