import { describe, expect, it } from 'vitest';
import { handLikelihood, handSaid, misreading } from '../../../src/engine/match/recognise/priors.ts';

// How likely pianos stand at a tuning and hands lie in a register, worked out by hand from the shares that the module states.

/** The normal density at so many standard deviations. */
const normal = (sds: number, sd: number): number => Math.exp(-0.5 * sds ** 2) / (sd * Math.sqrt(2 * Math.PI));

describe('a piano read at a tuning', () => {
  it('of a piano in tune is the piano as read: a hundred cents off it would be the rare one', () => {
    const { semitones, chance } = misreading(3);
    expect(semitones).toBe(0);
    // In tune: 74 of 100 about 3 cents with 8; neglected: not at 3 nor at 103, and at −97 no more; anything: at −97 and 3, not at 103.
    const inTune = 0.74 * normal(0, 8) + 0.05 / 160;
    expect(chance).toBeCloseTo(inTune / (inTune + 0.05 / 160), 9);
  });

  it('may be flat rather than sharp: read 35 sharp it is more likely 65 flat, read a semitone low', () => {
    const { semitones, chance, otherwise } = misreading(35);
    expect({ semitones, otherwise }).toEqual({ semitones: 1, otherwise: 0 });
    const sharp = 0.74 * normal(32 / 8, 8) + 0.05 / 160;
    const flat = 0.74 * normal(68 / 8, 8) + 0.21 / 83 + 0.05 / 160;
    expect(chance).toBeCloseTo(flat / (flat + sharp), 9);
  });

  it('far flat may be in tune, read a semitone high', () => {
    // 97 cents flat is flatter than neglected pianos are; a semitone up it is 3 cents sharp.
    expect(misreading(-97)).toMatchObject({ semitones: -1, otherwise: 0 });
    expect(misreading(-97).chance).toBeGreaterThan(0.98);
    expect(misreading(-60)).toMatchObject({ semitones: 0, otherwise: -1 });
  });

  it('names what it is if not that: the likelier of the two neighbours', () => {
    expect(misreading(20)).toMatchObject({ semitones: 0, otherwise: 1 });
    expect(misreading(-45)).toMatchObject({ semitones: 0, otherwise: -1 });
  });

  it('is that of the piano that is known where it sounds like it, either way', () => {
    expect(misreading(25, [25])).toMatchObject({ semitones: 0 });
    expect(misreading(25, [-75])).toMatchObject({ semitones: 1 });
    // Nine in ten times it is that piano, 4 cents about it.
    const its = 0.9 * normal(5 / 4, 4);
    const density = (cents: number): number =>
      0.74 * normal((cents - 3) / 8, 8) + (cents > -93 && cents < -10 ? 0.21 / 83 : 0) + 0.05 / 160;
    const asRead = its + 0.1 * density(30);
    const low = 0.9 * normal(95 / 4, 4) + 0.1 * density(-70);
    expect(misreading(30, [25]).chance).toBeCloseTo(asRead / (asRead + low), 9);
  });
});

describe('which hand', () => {
  const scale = { form: 'scale', octaves: 1 } as const;
  const likelihood = (right: number, left: number): unknown => ({
    right: expect.closeTo(right / (right + left), 9),
    left: expect.closeTo(left / (right + left), 9),
  });

  it('is as somebody said', () => {
    expect(handSaid('left')).toEqual({ left: 1, right: 0 });
    expect(handSaid('right')).toEqual({ left: 0, right: 1 });
  });

  it('is told by the register alone where nothing is known of the player', () => {
    // From middle C: the right hand at its place in both kinds of books; the left an octave above its place in both.
    expect(handLikelihood(scale, 60)).toEqual(likelihood(0.75, 0.11));
    // From the C below: the left at its place, the right an octave below its own.
    expect(handLikelihood(scale, 48)).toEqual(likelihood(0.11, 0.75));
    // From the G below middle C: the right at its place in two books of three, in the third an octave low; the left an octave high in two.
    expect(handLikelihood(scale, 55)).toEqual(
      likelihood((2 / 3) * 0.75 + (1 / 3) * 0.11, (2 / 3) * 0.11 + (1 / 3) * 0.75),
    );
    // Two octaves above middle C: the left is three octaves away.
    expect(handLikelihood(scale, 84)).toEqual(likelihood(0.02, 0.005));
  });

  it('begins an octave lower where three or four octaves are played', () => {
    expect(handLikelihood({ form: 'scale', octaves: 3 }, 48)).toEqual(likelihood(0.75, 0.11));
    expect(handLikelihood({ form: 'scale', octaves: 2 }, 48)).toEqual(likelihood(0.11, 0.75));
  });

  it('is learnt from this player’s own attempts at the form in that register, which weigh one half each', () => {
    const played = { hand: 'left', form: 'scale', midi: 60 } as const;
    const usual = { right: (2 * 0.75) / 0.86, left: (2 * 0.11) / 0.86 };
    expect(handLikelihood(scale, 60, [played])).toEqual(likelihood(usual.right, usual.left + 1));
    expect(handLikelihood(scale, 60, [{ ...played, midi: 66 }])).toEqual(
      likelihood(usual.right, usual.left + 1),
    );
    expect(handLikelihood(scale, 60, [{ ...played, midi: 67 }])).toEqual(likelihood(0.75, 0.11));
    expect(handLikelihood(scale, 60, [{ ...played, form: 'arpeggio' }])).toEqual(likelihood(0.75, 0.11));
  });
});
