import { Views } from '@/app/ui/page/views';
import css from '../days.module.css';

type ViewsOfDaysProps = Readonly<{ here: 'now' | 'asked' | 'past' }>;

/** The three ways to look at days. */
export function ViewsOfDays({ here }: ViewsOfDaysProps) {
  return (
    <div className={css['views']}>
      <Views
        label="Ways to look at days"
        views={[
          { href: '/studio/days', name: 'Open jobs', current: here === 'now' },
          { href: '/studio/days/new', name: 'Look a day up', current: here === 'asked' },
          { href: '/studio/days/past', name: 'How they turned out', current: here === 'past' },
        ]}
      />
    </div>
  );
}
