import type { PianoProfile, RoomCheck } from '../../engine/index.ts';
import type { RoomStep } from '../attempt/room.svelte.ts';
import { signed, shown, withUnit } from '../kit/figures.ts';

/** What the room check asks for or has found: one thing in large type, and lines below it. */
export interface RoomWords {
  readonly title: string;
  readonly lines: readonly string[];
}

const NOTES = {
  low: 'Play one low note, and let it ring',
  middle: 'Play one note in the middle',
  high: 'Play one high note',
} as const;

export function roomWords(step: RoomStep): RoomWords {
  switch (step.kind) {
    case 'off':
    case 'opening':
      return { title: 'Opening the microphone', lines: [] };
    case 'silence':
      return {
        title: 'Be quite still',
        lines: [
          `The room is listened to by itself: ${step.leftSec} more seconds.`.replace(
            '1 more seconds',
            '1 more second',
          ),
        ],
      };
    case 'note':
      return { title: NOTES[step.asked], lines: [] };
    case 'working':
      return { title: 'Working it out', lines: [] };
    case 'done':
      return found(step.check);
  }
}

function found(check: RoomCheck): RoomWords {
  const { findings, notes, piano } = check;
  const softest = notes.reduce<number | null>(
    (least, { aboveNoiseDb }) => (least === null ? aboveNoiseDb : Math.min(least, aboveNoiseDb)),
    null,
  );
  const about = piano === null ? [] : [`${pianoWords(piano)} It is remembered as this piano.`];
  if (findings.length > 0)
    return {
      title: 'Something can be better here',
      lines: [...findings.map(({ detail }) => detail), ...about],
    };
  const above =
    softest === null ? '' : ` The softest note stands ${withUnit(shown(softest), 'dB')} above the room.`;
  return {
    title: 'This is a good place',
    lines: [`Nothing here is in the way of listening.${above}`, ...about],
  };
}

/** What is known of a piano, in one sentence. */
export function pianoWords({ tuningCents }: PianoProfile): string {
  const cents = Math.round(tuningCents.value);
  const a4 = withUnit(shown(440 * 2 ** (tuningCents.value / 1200), 1), 'Hz');
  if (Math.abs(cents) < 2) return `The piano stands at A = ${a4}.`;
  return `The piano stands at A = ${a4}, ${withUnit(signed(cents), 'cents')} from 440.`;
}
