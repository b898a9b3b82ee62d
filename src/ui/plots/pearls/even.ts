import type { Exercise, Hand } from '../../../engine/index.ts';
import { pulseStretches, type Struck } from './pulse.ts';
import type { Spot } from './spots.ts';

/** When each step was struck, and whether a repeat or a restart lies on the way to it. */
export function strikes(spots: readonly Spot[], exercise: Exercise): readonly Struck[] {
  const bySteps = new Map<number, number[]>();
  for (const { beads } of spots)
    for (const bead of beads)
      if (bead.kind === 'struck' || bead.kind === 'wrong')
        bySteps.set(bead.step, [...(bySteps.get(bead.step) ?? []), bead.timeSec]);
  const detoursSec = spots.flatMap(({ beads: [bead] }) =>
    bead?.kind === 'extra' && (bead.extraKind === 'repeat' || bead.extraKind === 'restart')
      ? [bead.timeSec]
      : [],
  );
  return [...bySteps]
    .map(([step, times]) => ({
      beat: exercise.steps[step]?.beat ?? step,
      timeSec: times.reduce((sum, time) => sum + time, 0) / times.length,
    }))
    .sort((a, b) => a.timeSec - b.timeSec)
    .map((strike, index, all) => {
      const fromSec = all[index - 1]?.timeSec ?? strike.timeSec;
      const interrupted = detoursSec.some((sec) => sec > fromSec && sec < strike.timeSec);
      return { ...strike, interrupted };
    });
}

/** Where each step would fall if every stretch between stops were perfectly even; seconds by step. */
export function evenTimes(exercise: Exercise, struck: readonly Struck[]) {
  const stretches = pulseStretches(struck);
  return exercise.steps.flatMap(({ step, beat }) => {
    const stretch = stretches.find((one) => beat >= one.fromBeat && beat <= one.toBeat);
    if (stretch === undefined) return [];
    return [{ step, timeSec: stretch.pulse.startSec + beat * stretch.pulse.secPerBeat }];
  });
}

/** Mean level of each hand's right notes, dB: what a pearl's size is measured by. */
export function meanLevels(spots: readonly Spot[]): Readonly<Record<Hand, number>> {
  const mean = (hand: Hand): number => {
    const levels = spots
      .filter((spot) => spot.hand === hand)
      .flatMap((spot) => spot.beads.flatMap((bead) => (bead.kind === 'struck' ? [bead.levelDb] : [])));
    return levels.length === 0 ? 0 : levels.reduce((sum, level) => sum + level, 0) / levels.length;
  };
  return { left: mean('left'), right: mean('right') };
}
