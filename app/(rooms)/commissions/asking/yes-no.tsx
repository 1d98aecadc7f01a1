import { Choice } from '@/app/ui/form/choice';

type YesNoProps = Readonly<{
  name: string;
  legend: string;
  hint?: string | undefined;
  answer: boolean | null | undefined;
}>;

const answers = [
  { value: '', label: 'not known yet' },
  { value: 'yes', label: 'yes' },
  { value: 'no', label: 'no' },
];

/** Yes, no, or not known yet: three answers, and the last one can be gone back to. */
export function YesNo({ name, legend, hint, answer }: YesNoProps) {
  return (
    <Choice
      name={name}
      legend={legend}
      hint={hint}
      options={answers}
      defaultValue={typeof answer === 'boolean' ? yesOrNo(answer) : ''}
    />
  );
}

function yesOrNo(answer: boolean): string {
  return answer ? 'yes' : 'no';
}
