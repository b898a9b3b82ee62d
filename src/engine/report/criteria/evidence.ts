import type { FindingKind, Heard, PlayedNote } from '../../listen/index.ts';
import type { Alignment, ExtraNote, MatchedNote } from '../../match/index.ts';
import { isDetour } from '../../timeline/index.ts';
import type { Criteria } from './index.ts';

/*
 * How sure it is that a note was wrong, missing or too many. What is not sure is no accusation anywhere: neither in the sentence nor
 * in the list, on the string or among the figures. A written note is then unsure, and asked about; a key too many is left out. But
 * nothing is measured across it either: what may have been a key struck again is no hesitation.
 */

/**
 * A wrong note needs two errors of the ear to be none: one key invented, and the written one, in its place, passed over. The second
 * happens to far less than one in ten (0.03 % of notes alone, 0.6 % under their octave: development piano).
 */
const PASSED_OVER = 0.1;
/**
 * A finger strikes one key again some seven times a second at will (tapping: Repp 2005, memory), but a double blow comes sooner, and the
 * beats about it shift (0.127 s: development piano); what comes sooner than this is an echo of the ear.
 */
const SOONEST_AGAIN_SEC = 0.1;

/** Probability that a written note is what it was called, wrong or missing; 1 of any other. */
export function sureOfFault(heard: Heard, note: MatchedNote): number {
  if (note.verdict === 'missed') return note.sure ?? 1;
  if (note.verdict !== 'wrong') return 1;
  return 1 - PASSED_OVER * (1 - heard.notes[note.played]!.confidence);
}

/** Probability that a key was struck that nobody asked for. Of one struck again the other blow is evidence that it was meant. */
export function sureOfExtra(heard: Heard, { played, kind }: ExtraNote): number {
  const note = heard.notes[played]!;
  if (kind === 'slip' || kind === 'other') return note.confidence;
  if (kind === 'repeat' && isEcho(note, heard.notes)) return 0;
  return 1 - PASSED_OVER * (1 - note.confidence);
}

function isEcho({ midi, timeSec }: PlayedNote, notes: readonly PlayedNote[]): boolean {
  return notes.some(
    (other) =>
      other.midi === midi &&
      other.timeSec !== timeSec &&
      Math.abs(other.timeSec - timeSec) < SOONEST_AGAIN_SEC,
  );
}

/**
 * Less likely than this a key was not struck again, 0..1. In a room of 1.2 s and beside a voice (73 attempts, development piano) seven of the
 * twelve such findings that none had struck lay under it; of those that were struck none did.
 */
const LEAST_PERHAPS = 0.1;

/** Struck with another, s: a string that rings already is moved by that blow. */
const WITH_SEC = 0.06;

/**
 * With the pedal held every string struck before rings on, and a key that seems to sound anew with another was as likely only moved by
 * its blow (an octave below the note before it, believed in over 99.99 %: development piano).
 */
function ringsAlready({ notes }: Heard, { played, kind }: ExtraNote): boolean {
  const { midi, timeSec } = notes[played]!;
  const withAnother = notes.some(
    (other, at) => at !== played && Math.abs(other.timeSec - timeSec) < WITH_SEC,
  );
  if (kind === 'restart' || !withAnother) return false;
  return notes.some((other) => other.midi === midi && other.timeSec < timeSec - WITH_SEC);
}

/** Sound that is too poor to say that a note was not struck, or that another was. Common practice, no source. */
const MISSING_HIDDEN: readonly FindingKind[] = ['too-quiet', 'noise', 'speech'];
const EXTRA_INVENTED: readonly FindingKind[] = ['too-quiet', 'noise', 'speech', 'clipping'];

/** What is sure of an alignment. */
export interface Sure {
  /** with only those faults that are surely ones */
  readonly alignment: Alignment;
  /** when a key was struck again or the player went back, though that is not sure: nothing is said of it, and no interval spans it */
  readonly perhapsAgainSec: readonly number[];
}

/**
 * Alignment → what of its faults is surely one, by the criteria. Where sound was lost, or is too poor for it, no note is missing and
 * none is too many; where the pedal was held, none whose string rang already.
 */
export function onlySure(
  heard: Heard,
  alignment: Alignment,
  { sure }: Criteria,
  { soundLost = false, pedalHeld = false },
): Sure {
  const found = (kinds: readonly FindingKind[]): boolean =>
    soundLost || heard.findings.some(({ kind }) => kinds.includes(kind));
  const [missingHidden, extraInvented] = [found(MISSING_HIDDEN), found(EXTRA_INVENTED)];
  const matched = alignment.matched.map((note): MatchedNote => {
    const hidden = note.verdict === 'missed' && missingHidden;
    if (!hidden && sureOfFault(heard, note) >= sure) return note;
    const { step, expected } = note;
    return { step, expected, verdict: 'unsure', reason: { notice: 'not-certain', name: expected.name } };
  });
  // What rings on by itself took no time.
  const struck = alignment.extras.filter(
    (extra) => sureOfExtra(heard, extra) > 0 && !(pedalHeld && ringsAlready(heard, extra)),
  );
  const extras = struck.filter(
    (extra) => sureOfExtra(heard, extra) >= sure && (!extraInvented || extra.kind === 'restart'),
  );
  const perhaps = struck.filter(
    (extra) =>
      isDetour(extra.kind) &&
      !extras.includes(extra) &&
      heard.notes[extra.played]!.confidence >= LEAST_PERHAPS,
  );
  return {
    alignment: { ...alignment, matched, extras },
    perhapsAgainSec: perhaps.map(({ played }) => heard.notes[played]!.timeSec),
  };
}
