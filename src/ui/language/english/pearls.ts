import type { ExtraKind } from '../../../engine/index.ts';

const EXTRA: Readonly<Record<ExtraKind, string>> = {
  slip: 'caught by the way',
  repeat: 'struck again',
  restart: 'played while going back',
  other: 'not in the exercise',
};

/** The string of pearls. */
export const PEARLS = {
  string:
    'The attempt as a string of pearls. Arrow keys move from pearl to pearl, Enter plays that spot, Shift and an arrow ' +
    'key choose a stretch.',
  touch: 'Touch a pearl to hear that spot. Draw along the string, or hold Shift, to choose a stretch.',
  EXTRA,
  struckFor: (struck: string, wanted: string) => `${struck} struck instead of ${wanted}`,
  missed: (name: string) => `${name} missed`,
  notSure: (name: string, reason: string) => `${name} not sure: ${reason}`,
  /** under the pearls, where there is little room */
  label: {
    extra: { slip: 'caught', repeat: 'again', restart: 'back', other: 'extra' },
    missed: 'missed',
    unsure: 'unsure',
    wanted: (name: string) => `not ${name}`,
    struckFor: (struck: string, wanted: string) => `${struck} instead of ${wanted}`,
    noteMissed: (name: string) => `${name} missed`,
  },
  thumbUnder: 'thumb under',
  overThumb: 'over the thumb',
  inTime: 'in time',
  late: (amount: string) => `${amount} late`,
  early: (amount: string) => `${amount} early`,
  louder: (amount: string) => `${amount} louder than the rest`,
  softer: (amount: string) => `${amount} softer than the rest`,
};
