import type { Heard, PlayedNote } from '../listen/index.ts';
import type { Alignment } from '../match/index.ts';
import { RECHECK_BOUNDS } from './bounds.ts';
import { recordOf } from './record.ts';
import type { HeardExtra, Listening } from './types.ts';

/*
 * A key struck again before the next step. The alignment takes what sounds again 10 dB softer for the string that rings on, or for its
 * damper; but of a string that still rings the level is told up to 10 dB too low (listen/partials/probe.ts), and of a soft second blow
 * the blind ear is often in doubt. So the closer look is asked about both: on the development piano (360 attempts of all sets) its log
 * odds were 2.1 or more at the six such blows that were struck, and over 0 at one of some twenty findings that were none.
 */

/** So soon after a blow the closer look still sees that one, s: log odds of 3 and more at 0.06 to 0.08 s, where nothing was struck. */
const SOONEST_SEC = 0.1;
/** What the blind ear believed in less, 0..1, is not asked about. */
const LEAST_BELIEVED = 0.4;

/** The same key once more, before the next step, of which the alignment made nothing. */
interface Again {
  readonly step: number;
  readonly note: PlayedNote;
}

/** First listening and its alignment → where keys may have been struck again. */
export function maybeAgain(heard: Heard, { matched, extras }: Alignment): readonly Again[] {
  const struck = matched.flatMap((note) =>
    'played' in note && note.played !== undefined ? [{ step: note.step, ...heard.notes[note.played]! }] : [],
  );
  const others = extras.map(({ played, kind }) => ({ kind, ...heard.notes[played]! }));
  const backSec = others.flatMap(({ kind, timeSec }) => (kind === 'restart' ? [timeSec] : []));
  const spoken = [...struck, ...others];
  const left = (heard.candidates ?? []).flatMap(({ probability, note }) =>
    note !== null && probability >= LEAST_BELIEVED && !spoken.some((one) => isSame(one, note)) ? [note] : [],
  );
  return struck.flatMap(({ step, midi, timeSec }) => {
    const nextSec = Math.min(
      ...struck.flatMap((other) => (other.step !== step && other.timeSec > timeSec ? [other.timeSec] : [])),
    );
    // After the last step dampers fall; where the player went back, the same keys are struck again anyway.
    if (nextSec === Infinity || backSec.some((sec) => sec > timeSec && sec < nextSec)) return [];
    const [fromSec, toSec] = [timeSec + SOONEST_SEC, nextSec - RECHECK_BOUNDS.nearSec];
    return left
      .filter((note) => note.midi === midi && note.timeSec > fromSec && note.timeSec < toSec)
      .map((note) => ({ step, note }));
  });
}

/** Of these what the sound bears out, as sure as the less sure of both listenings. */
export function struckAgain(
  { asker, strays, alignment, rechecks }: Listening,
  maybe: readonly Again[],
): readonly HeardExtra[] {
  return maybe.flatMap(({ step, note }): readonly HeardExtra[] => {
    const answer = strays.answer(note);
    const isStruck = answer.logOdds > 0;
    const { hand } = asker.steps[step]!.notes[0]!;
    const midi = note.midi + alignment.semitoneShift;
    const decision = isStruck ? 'struck' : 'not-struck';
    rechecks.push(recordOf(step, midi, hand, 'extra', 'not-heard', answer, decision));
    const confidence = Math.min(note.confidence, strays.sureOfExplained(note));
    return isStruck ? [{ note: { ...note, confidence }, kind: 'repeat', step }] : [];
  });
}

/** A key strikes once at a time: key and moment name a strike. */
export function isSame(a: PlayedNote, b: PlayedNote): boolean {
  return a.midi === b.midi && a.timeSec === b.timeSec;
}
