import { Table } from '@/app/ui/figures/table';
import { Caution } from '@/app/ui/page/caution';
import { Facts } from '@/app/ui/page/facts';
import { Working } from '@/app/ui/page/working';
import type { PlanShown } from '@/lib/installation/reads/plan/told';
import { planFormula, planSource } from '@/lib/installation/rules/plan/told';
import { formatLength, formatWeight, type LengthSystem } from '@/lib/units/rules';
import { decideOnSite, type FixingPlan } from '@/lib/walls/rules';
import { drawWall } from '@/lib/walls/rules/drawing/drawing';
import { cleatWords } from '@/lib/walls/rules/plan/asked';
import { PlanDrawing } from './plan-drawing';
import css from './plan.module.css';

type PlanToldProps = Readonly<{ shown: PlanShown; plan: FixingPlan; unit: LengthSystem }>;

/** A fixing plan: drawn to scale, in figures, who lifts it, and what to mind. */
export function PlanTold({ shown, plan, unit }: PlanToldProps) {
  const { hands, advice, steps } = shown;
  return (
    <>
      <Caution>{decideOnSite}</Caution>
      <PlanDrawing drawing={drawWall({ wall: shown.survey, plan }, unit)} />
      <PlanFigures shown={shown} plan={plan} unit={unit} />
      <Working steps={steps} formula={planFormula} source={planSource} />
      {hands ? (
        <Working
          title={hands.words[0] ?? 'Who lifts it'}
          open
          steps={[...hands.steps, ...hands.words.slice(1)]}
          formula="The lifting equation judges both ends of the lift; two people are reckoned with two thirds of their sum, three with a half. Practice has a say too, and the stricter of the two holds."
          source="DHHS (NIOSH) Publication 94-110, 1994, revised 2021; shares of two and three people from British practice (HSE), from memory; practice for 50, 100 and 150 lb"
          caution="For both hands, close to the body, on a clear floor. On a ladder or a stair: a lift, or hired hands."
        />
      ) : null}
      <h3>In this order</h3>
      <ol className={css['order']}>
        {advice.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ol>
    </>
  );
}

function PlanFigures({ shown, plan, unit }: PlanToldProps) {
  const weight = (grams: number) => formatWeight(grams, unit === 'in' ? 'lb' : 'kg');
  const length = (um: number) => formatLength(um, unit);
  const { piece, cleat, cleatUm } = plan.place;
  const { cleat: asked } = shown.asked.hanging;
  return (
    <>
      <Facts
        facts={[
          { name: 'Fixed with', value: shown.fixings },
          {
            name: 'Cleat',
            value: `${cleatWords[asked.made]}, ${length(cleat.widthUm)} long, ${length(asked.heightUm)} high, ${length(asked.thicknessUm)} thick`,
          },
          { name: 'Middle of the cleat', value: `${length(cleatUm)} above the floor` },
          { name: 'Lower edge of the piece', value: `${length(piece.bottomUm)} above the floor` },
          { name: 'Top of the piece', value: length(piece.bottomUm + piece.heightUm) },
          { name: 'Reckoned with', value: weight(shown.asked.piece.weightG) },
          {
            name: 'Each bears at most',
            value: `${weight(plan.pushEachG)} down, ${weight(plan.pullEachG)} off the wall`,
          },
          {
            name: 'Borne',
            value: `${Math.floor(plan.factor * 10) / 10} times over; ${plan.factorAsked} times is asked`,
          },
        ]}
      />
      <Table
        caption="Where to drill, from the left end of the wall and from the floor"
        columns={[
          { name: 'Hole' },
          { name: 'From the left', figure: true },
          { name: 'From the floor', figure: true },
        ]}
        rows={plan.holes.map(({ xUm, yUm }, at) => ({
          key: String(at),
          cells: [String(at + 1), length(xUm), length(yUm)],
        }))}
      />
    </>
  );
}
