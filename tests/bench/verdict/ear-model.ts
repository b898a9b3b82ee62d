import type { Heard, PlayedNote } from '../../../src/engine/index.ts';
import type { Random } from '../../support/random.ts';
import type { TrueNote, Truth } from '../../support/render.ts';
import { heardAsPlayed } from '../truth-report.ts';

/**
 * The errors of the ear as measured on 72 attempts of the development piano (1753 notes: lines of one hand, both hands and
 * chords), so that a list of notes is heard about as a rendered attempt is, without its sound.
 */
const MEASURED = {
  /** onset of one note: of its key, alike each time, alone and with others, and of the strike, SD in ms */
  keySdMs: { alone: 1.2, together: 2.4 },
  strikeSdMs: 1.4,
  /** below C3 and where others sound with it the error has wider tails */
  bassSdMs: 3,
  togetherSdMs: 2,
  tailShare: 0.1,
  tailSdMs: 8,
  /** what is struck together is heard nearer to each other by this share of what lies between (1466 moments) */
  drawnTogether: 0.06,
  /** level against the sound as it arrives: alone, with others */
  levelSdDb: { alone: 0.9, chord: 1.4, octave: 2.4 },
  /** dampings heard at all, and how late; one in five is some string's own decay */
  releaseHeard: { alone: 0.8, together: 0.5 },
  releaseMs: { mean: 10, sd: 30 },
  releaseEarlyShare: 0.2,
  releaseEarlyMs: 150,
  /**
   * after both listenings: notes lost under their octave, and among others. Of a note alone that the ear passes over the closer look
   * makes a question (240 of 240): as a list, without its sound, it would be called missing, so none is lost
   */
  lostUnderOctave: 0.006,
  lost: 0.0003,
  /** one struck note in five is believed in less than 99 %, the least 96.5 % (104 keys struck by mistake) */
  leastSure: 0.035,
} as const;

/** Notes closer than this are one moment. */
const TOGETHER_SEC = 0.06;

/** What was played → what the ear hands on, with its usual errors. */
export function overheard(truth: Truth, random: Random): Heard {
  const exact = heardAsPlayed(truth);
  const keys = Array.from({ length: 128 }, () => random.normal(1));
  const notes = truth.notes.flatMap((note, index): PlayedNote[] => {
    const others = truth.notes.filter(
      (other) => other !== note && Math.abs(other.timeSec - note.timeSec) < TOGETHER_SEC,
    );
    const underOctave = others.some(({ midi }) => midi < note.midi && (note.midi - midi) % 12 === 0);
    const alone = others.length === 0;
    const lost = random.chance(underOctave ? MEASURED.lostUnderOctave : MEASURED.lost);
    if (lost && !alone) return [];
    const ownMs = keys[note.midi]! * MEASURED.keySdMs[alone ? 'alone' : 'together'];
    const levelSd = alone ? 'alone' : underOctave ? 'octave' : 'chord';
    return [
      {
        ...exact.notes[index]!,
        timeSec: drawnSec(note, others) + (ownMs + random.normal(onsetSdMs(note, alone, random))) / 1000,
        levelDb: note.levelDb + random.normal(MEASURED.levelSdDb[levelSd]),
        confidence: 1 - MEASURED.leastSure * random.uniform(0, 1) ** 6,
        releaseSec: releaseOf(note, alone, random),
      },
    ];
  });
  const inTime = [...notes].sort((a, b) => a.timeSec - b.timeSec || a.midi - b.midi);
  return { ...exact, notes: inTime, onsetSdMs: 2, levelSdDb: 0.9 };
}

/** A note's place, drawn towards the middle of all that sounds with it. */
function drawnSec({ timeSec }: TrueNote, others: readonly TrueNote[]): number {
  const middle = [timeSec, ...others.map((other) => other.timeSec)].reduce((sum, one) => sum + one, 0);
  return timeSec + MEASURED.drawnTogether * (middle / (others.length + 1) - timeSec);
}

function onsetSdMs({ midi }: TrueNote, alone: boolean, random: Random): number {
  if (!alone && random.chance(MEASURED.tailShare)) return MEASURED.tailSdMs;
  if (midi < 48) return MEASURED.bassSdMs;
  return alone ? MEASURED.strikeSdMs : MEASURED.togetherSdMs;
}

function releaseOf({ releaseSec, timeSec }: TrueNote, alone: boolean, random: Random): number | null {
  const heard = MEASURED.releaseHeard[alone ? 'alone' : 'together'];
  if (releaseSec === null || !random.chance(heard)) return null;
  const early = random.chance(MEASURED.releaseEarlyShare);
  const laterMs = early
    ? -Math.abs(random.normal(MEASURED.releaseEarlyMs))
    : MEASURED.releaseMs.mean + random.normal(MEASURED.releaseMs.sd);
  return Math.max(timeSec + 0.03, releaseSec + laterMs / 1000);
}
