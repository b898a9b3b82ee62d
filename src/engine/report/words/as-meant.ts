import { median } from '../../base/statistics.ts';
import { accentsOf } from '../../exercise/index.ts';
import type { Loudness, Practising, Touch } from '../../exercise/index.ts';
import { outcomeOf, touchOutcome } from '../criteria/index.ts';
import { accentDb, growthOf, isMeasured } from '../measures/index.ts';
import type { Estimate } from '../types.ts';
import type { Saying } from './said/index.ts';
import type { Scene } from './scene.ts';

/*
 * Touch and loudness against what was meant: it is so, it is surely not so, or it cannot be told. Bounds are common practice, no source,
 * unless said.
 */

/** From one step of dynamics to the next it is some 5 dB: less than this over the whole is no growing, and between the hands no lead. */
const LEAST_GROWTH_DB = 4;
const LEAST_LEAD_DB = 3;
/** An accent stands out by twice what is just heard (0.7–1.2 dB, Slade et al. 2022). */
const LEAST_ACCENT_DB = 2;
/** The middle lies so far off the line, as a share of the growth, where it does not grow steadily. */
const BOW_SHARE = 0.25;
/** How much one register of an unknown piano may be louder than that an octave off, one standard deviation, dB. */
const REGISTERS_DB = 2;

type Practised = Saying<'practised'>;
type TouchHeard = NonNullable<Practised['touch']>;
type LoudnessHeard = NonNullable<Practised['loudness']>;

/** Each where it was meant. */
export type AsMeant = Pick<Practised, 'touch' | 'loudness'>;

/** Touch and loudness, where they were meant, and what was meant was played. */
export function asMeant(scene: Scene, { intention: { touch, loudness }, repeats }: Practising): AsMeant {
  if (repeats === 0) return {};
  return {
    ...(touch !== undefined && { touch: touchHeard(scene, touch) }),
    ...(loudness !== undefined && { loudness: loudnessHeard(scene, loudness) }),
  };
}

/** The gaps that were heard, against the usual time from note to note. With the pedal no dampers are heard, and nothing is told. */
function touchHeard({ measured, criteria }: Scene, meant: Touch): TouchHeard {
  const { touchMs } = measured.measures;
  const ioiMs = median(measured.unbroken.map((interval) => interval.ioiMs));
  if (!isMeasured(touchMs) || ioiMs === undefined) return { meant, outcome: 'untold' };
  const outcome = touchOutcome(meant, touchMs, ioiMs, criteria.sureBy);
  const gap = { value: -touchMs.value, plusMinus: touchMs.plusMinus ?? 0 };
  return { meant, outcome, gapMs: Math.round(gap.value), plusMinusMs: Math.round(gap.plusMinus) };
}

/** The levels that were heard. How loud it was throughout cannot be told: it is as loud as the device is near. */
function loudnessHeard(scene: Scene, meant: Loudness): LoudnessHeard {
  const { measured, exercise, criteria } = scene;
  const loudness = measured.loudness.flatMap((own) => own.loudness);
  const told = (figure: Estimate | null, least: number): LoudnessHeard =>
    figure === null
      ? { meant, outcome: 'untold' }
      : {
          meant,
          outcome: outcomeOf(figure, least, criteria.sureBy),
          db: figure.value,
          plusMinusDb: figure.plusMinus ?? 0,
        };
  const accents = accentsOf(meant);
  if (accents !== null) {
    const isAccent = (step: number): boolean => (exercise.steps[step]?.copy?.place ?? 1) % accents === 0;
    return told(accentDb(loudness, isAccent, measured.measures.keysKnown === true), LEAST_ACCENT_DB);
  }
  switch (meant) {
    case 'growing':
    case 'fading': {
      const growth = growthOf(loudness, exercise, measured.measures.keysKnown === true);
      if (growth === null) return { meant, outcome: 'untold' };
      const sign = meant === 'growing' ? 1 : -1;
      const grows = { ...growth.growsDb, value: sign * growth.growsDb.value };
      const { value, plusMinus = 0 } = growth.bowDb ?? { value: 0 };
      const bent =
        Math.abs(value) - criteria.sureBy * plusMinus > BOW_SHARE * Math.abs(grows.value)
          ? sign * value > 0
            ? ('early' as const)
            : ('late' as const)
          : undefined;
      return { ...told(grows, LEAST_GROWTH_DB), ...(bent !== undefined && { bent }) };
    }
    case 'left-over-right':
    case 'right-over-left': {
      const figure = measured.measures.togetherness?.leftLouderDb;
      if (figure === undefined || !isMeasured(figure)) return { meant, outcome: 'untold' };
      const sign = meant === 'left-over-right' ? 1 : -1;
      const plusMinus = Math.hypot(figure.plusMinus ?? 0, REGISTERS_DB);
      return told({ value: sign * figure.value, plusMinus }, LEAST_LEAD_DB);
    }
    default:
      return { meant, outcome: 'untold' };
  }
}
