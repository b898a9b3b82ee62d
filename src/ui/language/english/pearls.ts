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
  touch: 'Touch a pearl to hear that spot. Draw along the string to choose a stretch.',
  ring: 'Empty ring: not sure about this note.',
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
  legend:
    'The faint ticks are where even notes would fall. A pearl is a note at the moment it sounded, the larger the louder; a broken ' +
    'ring was missed, an empty one is not sure, a wrong note hangs below with its name, a small ring is an extra one. An arch is a ' +
    'crossing, thick where late.',
  thumbUnder: 'thumb under',
  overThumb: 'over the thumb',
  inTime: 'in time',
  late: (amount: string) => `${amount} late`,
  early: (amount: string) => `${amount} early`,
  louder: (amount: string) => `${amount} louder than the rest`,
  softer: (amount: string) => `${amount} softer than the rest`,
};
