import { lineThrough, type Hand, type Report } from '../../../engine/index.ts';
import { shown, withUnit } from '../../kit/figures.ts';
import { strings } from '../../language/index.ts';
import type { GraphFigure, GraphPoint } from '../../plots/graph/types.ts';
import type { Places } from './places.ts';

/** A change of loudness of piano tones is audible from about 0.7 to 1.2 dB (Slade et al. 2022). */
const AUDIBLE_DB = 1;
/** A note this far from its neighbours stands out. Common practice, no source. */
const LOUD_DB = 3;
const HANDS: readonly Hand[] = ['right', 'left'];

/** Loudness of each right note against the line over pitch of its hand; chords by the mean of their notes. */
export function loudnessFigure(report: Report, places: Places): GraphFigure | null {
  const t = strings().detail.loudness;
  const right = report.notes.filter((note) => note.verdict === 'correct' && note.step !== null);
  const both = new Set(right.map((note) => note.hand)).size > 1;
  const points = HANDS.flatMap((hand): GraphPoint[] => {
    const own = right.filter((note) => note.hand === hand);
    const line = lineThrough(
      own.map((note) => note.midi),
      own.map((note) => note.levelDb),
    );
    const mean = own.reduce((sum, note) => sum + note.levelDb, 0) / Math.max(1, own.length);
    const above = own.map((note, index) => line?.residuals[index] ?? note.levelDb - mean);
    return [...new Set(own.map((note) => note.step!))].map((step) => {
      const here = above.filter((_, index) => own[index]!.step === step);
      const value = here.reduce((sum, db) => sum + db, 0) / here.length;
      const amount = withUnit(shown(Math.abs(value), 1), 'dB');
      return {
        step,
        spot: places.spotOf(step, hand),
        value,
        name: places.nameOf(step),
        hand: both ? hand : null,
        look: Math.abs(value) > LOUD_DB,
        words: (value >= 0 ? t.louder : t.softer)(places.spokenOf(step, both ? hand : undefined), amount),
      };
    });
  });
  if (points.length < 3) return null;
  return {
    id: 'loudness',
    title: t.title,
    meaning: t.meaning,
    definition: t.definition(withUnit(shown(LOUD_DB), 'dB')),
    unit: 'dB',
    decimals: 1,
    base: 0,
    signed: true,
    band: { from: -AUDIBLE_DB, to: AUDIBLE_DB, words: t.band },
    above: t.above,
    below: t.below,
    joined: false,
    points: [...points].sort((a, b) => a.step - b.step),
  };
}
