import type { ReactNode } from 'react';
import { BroughtQuestions } from './asking/brought-questions';
import { FirstQuestions } from './asking/first-questions';
import type { AskingProps } from './asking/known';
import { MoneyQuestions, WhenQuestions } from './asking/when-questions';
import { WhatQuestions } from './asking/what-questions';
import { WhereQuestions } from './asking/where-questions';
import { WhoQuestions } from './asking/who-questions';
import css from './asking/asking.module.css';

type RequestQuestionsProps = AskingProps & Readonly<{ afterFirst?: ReactNode }>;

/** What is asked when a commission is opened; all but the title may stay open. */
export function RequestQuestions({ afterFirst, ...asking }: RequestQuestionsProps) {
  return (
    <>
      <input type="hidden" name="lengthUnit" value={asking.lengthUnit} />
      <FirstQuestions {...asking} />
      {afterFirst}
      <div className={css['groups']}>
        <WhoQuestions {...asking} />
        <WhatQuestions {...asking} />
        <WhereQuestions {...asking} />
        <WhenQuestions {...asking} />
        <MoneyQuestions {...asking} />
        <BroughtQuestions {...asking} />
      </div>
    </>
  );
}
