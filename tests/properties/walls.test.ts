import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { handsFor, planFixings, planRefusalMessage } from '@/lib/walls/rules';
import { lateralLb } from '@/lib/walls/rules/fixings/lateral';
import { bearsAtAngle, sharesOf } from '@/lib/walls/rules/fixings/loads';
import type { FixingAsked } from '@/lib/walls/rules/plan/asked';
import { screwNames, screws } from '@/lib/walls/rules/fixings/screws';
import { aHanging, aPiece, aPlan, aWall, inches } from '@/tests/rules/walls/a-wall';

const weight = fc.integer({ min: 1, max: 136_078 });
const places = fc.uniqueArray(fc.integer({ min: 0, max: 4_000_000 }), {
  minLength: 1,
  maxLength: 8,
});

test.prop([weight, weight, fc.constantFrom(...screwNames)])(
  'a heavier piece never hangs on fewer fixings, nor more safely',
  (one, other, screw) => {
    const [light, heavy] = [Math.min(one, other), Math.max(one, other)];
    const fixing: FixingAsked = {
      ...{ by: 'screw', screw, lengthUm: inches(3.5), isStainless: true, perUpright: null },
    };
    const asked = aHanging({ fixing });
    const [lighter, heavier] = [light, heavy].map((weightG) =>
      planFixings(aPlan({ asked, piece: aPiece({ weightG }) })),
    );
    if (!lighter?.ok) expect(heavier?.ok).toBe(false);
    if (!lighter?.ok || !heavier?.ok) return;
    expect(heavier.value.holes.length).toBeGreaterThanOrEqual(lighter.value.holes.length);
    expect(heavier.value.factor).toBeGreaterThanOrEqual(heavier.value.factorAsked);
  },
);

test.prop([places, fc.integer({ min: 0, max: 4_000_000 })])(
  'the shares of the uprights are the whole weight, and turn about its middle',
  (atUms, middleUm) => {
    const shares = sharesOf(atUms, middleUm);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    if (atUms.length < 2) return;
    const about = shares.reduce((sum, share, at) => sum + share * (atUms[at] ?? 0), 0);
    expect(Math.abs(about - middleUm)).toBeLessThan(1);
  },
);

const bears = fc.integer({ min: 1, max: 1_000_000 });
test.prop([bears, bears, bears, bears])(
  'what a screw bears at an angle lies between what it bears either way',
  (pull, push, pulled, pushed) => {
    const together = bearsAtAngle({ pull, push }, { pull: pulled, push: pushed });
    expect(together).toBeGreaterThanOrEqual(Math.min(pull, push) * 0.999999);
    expect(together).toBeLessThanOrEqual(Math.max(pull, push) * 1.000001);
  },
);

const hundredths = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
test.prop([
  fc.constantFrom(...screwNames),
  hundredths(31, 73),
  hundredths(50, 300),
  fc.tuple(hundredths(25, 150), hundredths(0, 150)),
])('a board between, or softer wood, never makes a joint stronger', (...of) => {
  const [name, gravity, mainIn, [sideIn, gapIn]] = of;
  const bearsIn = (wood: number, between: number) =>
    lateralLb({
      screw: screws[name],
      main: { gravity: wood, grain: 'along', lengthIn: mainIn },
      side: { gravity: 0.42, grain: 'across', lengthIn: sideIn },
      gapIn: between,
    }).loadLb;
  expect(bearsIn(gravity, gapIn)).toBeGreaterThan(0);
  expect(bearsIn(gravity, gapIn)).toBeLessThanOrEqual(bearsIn(gravity, 0) + 1e-9);
  expect(bearsIn(0.31, gapIn)).toBeLessThanOrEqual(bearsIn(gravity, gapIn) + 1e-9);
});

const um = fc.integer({ min: -1_000_000, max: 10_000_000 });
test.prop([um, um, fc.tuple(um, um), fc.integer({ min: -10, max: 200_000 })])(
  'whatever is typed, there is a plan or a sentence that says why not',
  (widthUm, heightUm, [middleUm, eyeUm], weightG) => {
    const piece = aPiece({ widthUm, heightUm, weightG });
    const asked = aHanging({ middleUm, height: { by: 'eye', eyeUm } });
    const planned = planFixings(aPlan({ wall: aWall(), piece, asked }));
    if (planned.ok) {
      const { holes, place, factor } = planned.value;
      expect(factor).toBeGreaterThanOrEqual(3);
      for (const { xUm } of holes) {
        expect(xUm).toBeGreaterThan(place.cleat.leftUm);
        expect(xUm).toBeLessThan(place.cleat.leftUm + place.cleat.widthUm);
      }
      return;
    }
    expect(planned.refusal.length).toBeGreaterThan(0);
    for (const reason of planned.refusal) {
      expect(planRefusalMessage(reason, 'in')).toMatch(/^[A-Z0-9].*\.$/s);
      expect(planRefusalMessage(reason, 'mm')).not.toMatch(/NaN|undefined/);
    }
  },
);

test.prop([weight, weight, fc.integer({ min: 0, max: 2_000_000 })])(
  'a heavier piece is never told to fewer hands',
  (one, other, bottomUm) => {
    const order = ['one', 'two', 'three', 'lift'];
    const sides = { widthUm: inches(30), heightUm: inches(30), depthUm: inches(2) };
    const [light, heavy] = [Math.min(one, other), Math.max(one, other)].map((weightG) => {
      const told = handsFor({ ...sides, weightG, standsAtUm: 0, bottomUm }, 'in');
      return told.ok ? order.indexOf(told.value.advised) : -1;
    });
    expect(heavy).toBeGreaterThanOrEqual(light ?? 9);
  },
);
