import { logOddsOf } from '../../base/odds.ts';
import type { Question, BlindBelief, Usual } from './types.ts';

/** Semitones from the key in question to those of which the blind ear's word is taken along. */
const ASKED = [0, -12, 12, -24, 24, -19, 19, -7, 7, -5, 5, -4, 4, -3, 3, -2, 2, -1, 1];
/** the ear says nothing below this; its surest is cut to the other */
const LEAST = 0.005;
const MOST = 0.995;
/** what stands for an ear that says nothing: log odds, moment, loudness / 6 dB, sounding */
const NOTHING = [logOddsOf(LEAST), 0, -3, 0];
/** what stands for a hand of which little was heard: belief, loudness / 6 dB */
const UNKNOWN_HAND = [0, -0.5];

/** Keys written further away than this are not told. */
const REACH = 36;
const SPAN = 2 * REACH + 1;
/** Steps further away in time count as if they were this far, s; and none as nearer than the other. */
export const FAR_SEC = 1.5;
const NEAR_SEC = 0.06;
const USUAL_SEC = 0.25;

export const TOLD_INPUTS = ASKED.length * NOTHING.length + 2 * UNKNOWN_HAND.length;
export const WRITTEN_INPUTS = 3 * SPAN + 3;

/** What the blind ear says of the key and its relatives, and usually says of both hands, as the network is told it. */
export function toldInputs({ told, ownHand, otherHand }: Question): Float32Array {
  const said = ASKED.flatMap((semitones) => {
    const one = told(semitones);
    return one === null ? NOTHING : valuesOf(one);
  });
  return Float32Array.from([...said, ...usualValues(ownHand), ...usualValues(otherHand)]);
}

/** What is written at the step and beside it, and when, as the network is told it. */
export function writtenInputs({ midi, written, before, after }: Question): Float32Array {
  const inputs = new Float32Array(WRITTEN_INPUTS);
  const mark = (midis: readonly number[], from: number): void => {
    for (const other of midis) if (Math.abs(other - midi) <= REACH) inputs[from + other - midi + REACH] = 1;
  };
  mark(written, 0);
  mark(before?.midis ?? [], SPAN);
  mark(after?.midis ?? [], 2 * SPAN);
  inputs[3 * SPAN] = awayInTime(before?.sinceSec);
  inputs[3 * SPAN + 1] = awayInTime(after?.untilSec);
  inputs[3 * SPAN + 2] = (midi - 60) / 24;
  return inputs;
}

function valuesOf({ probability, apartSec, loudnessDb, sounding }: BlindBelief): readonly number[] {
  const belief = logOddsOf(Math.min(Math.max(probability, LEAST), MOST));
  return [belief, apartSec * 100, loudnessDb / 6, sounding];
}

function usualValues(usual: Usual | null): readonly number[] {
  return usual === null ? UNKNOWN_HAND : [usual.belief, usual.loudnessDb / 6];
}

function awayInTime(sec = FAR_SEC): number {
  return Math.log2(Math.max(Math.min(sec, FAR_SEC), NEAR_SEC) / USUAL_SEC);
}
