import { copiesMeant, groupOf, isWhole, stretchIn } from '../../exercise/index.ts';
import type { Exercise, Intention, Practising } from '../../exercise/index.ts';
import { isMeasured, surelyOver } from '../measures/index.ts';
import type { AsMeant } from './as-meant.ts';
import type { Row } from './copies.ts';
import { ratioPlayed } from './ratio.ts';
import type { Saying } from './said/index.ts';
import type { Scene } from './scene.ts';

/* What keeps an attempt at an intention from being done, besides faults of notes and of time. */

/** What a rhythm needs to be one at least (the mildest that is practised, 2 : 1, is hardly played under it); common practice, no source. */
const LEAST_APART = 1.7;
/** A held note, or a stop, lasts so many times the other steps at least. */
const LEAST_HELD = 1.5;
/** Slow work that is played faster by over this share is other work. Common practice, no source. */
const FASTER_SHARE = 1.25;

export type Lack = Saying<'practised'>['lacks'][number];

/** `whole`: the exercise of which it is a part. */
export function lacksOf(
  scene: Scene,
  practised: Practising,
  whole: Exercise,
  row: Row,
  { touch, loudness }: AsMeant,
): readonly Lack[] {
  const { intention, repeats } = practised;
  if (repeats === 0) return [{ kind: 'whole' }];
  return [
    ...rhythmLacking(scene, practised),
    ...tempoLacking(scene, intention),
    ...(touch?.outcome === 'not-so' ? [{ kind: 'touch' as const }] : []),
    ...(loudness?.outcome === 'not-so' ? [{ kind: 'loudness' as const }] : []),
    ...timesLacking(intention, stretchIn(whole, intention).length, row),
  ];
}

/** So often in a row, or up to so many notes, was meant. */
function timesLacking(intention: Intention, length: number, { best, rightFromStart }: Row): readonly Lack[] {
  const { rhythm, times } = intention;
  if (best >= copiesMeant(intention, length)) return [];
  if (rhythm !== 'one-note-more') return [{ kind: 'times', right: best, wanted: times }];
  const lengths = Math.floor(rightFromStart / times);
  return [{ kind: 'length', right: lengths === 0 ? 0 : lengths + 1, wanted: length }];
}

/** Faster than slow work is done; of the whole and of a ladder's rung, slower than the tempo aimed at. */
function tempoLacking(scene: Scene, intention: Intention): readonly Lack[] {
  const { criteria, measured, report } = scene;
  const { tempoBpm } = measured.measures;
  const aimBpm = report.targetBpm;
  if (aimBpm === null || !isMeasured(tempoBpm)) return [];
  const slower = { ...tempoBpm, value: -tempoBpm.value };
  const off =
    surelyOver(tempoBpm, aimBpm * FASTER_SHARE, criteria) ||
    ((isWhole(intention) || intention.ladderBpm !== undefined) &&
      surelyOver(slower, -aimBpm * (1 - criteria.tempoShare), criteria));
  return off ? [{ kind: 'tempo', playedBpm: Math.round(tempoBpm.value), aimBpm: Math.round(aimBpm) }] : [];
}

function rhythmLacking(scene: Scene, practised: Practising): readonly Lack[] {
  const { rhythm } = practised.intention;
  const ratio = ratioPlayed(scene, practised);
  if (ratio === null) return [];
  const pairs = rhythm === 'long-short' || rhythm === 'short-long';
  const least = pairs ? LEAST_APART : LEAST_HELD;
  if (ratio.value + scene.criteria.sureBy * ratio.plusMinus >= least) return [];
  if (pairs) return [{ kind: 'rhythm', rhythm, played: ratio.value, turned: ratio.value < 1 / LEAST_APART }];
  return [{ kind: 'holds', rhythm, group: groupOf(rhythm) }];
}
