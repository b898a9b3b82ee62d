import { ALL_KEYS } from '../../engine/index.ts';

/** Where a key stands on the circle of fifths; per cent of the circle's side, from its top left. */
export interface CirclePlace {
  readonly key: string;
  readonly major: boolean;
  readonly xPercent: number;
  readonly yPercent: number;
}

/** Distance from the middle, per cent of the side: major keys outside, their relative minors inside. */
const RADIUS = { major: 43, minor: 25 } as const;
const PLACES = 12;

/** The 24 keys: C at the top, fifths clockwise, each minor inside its relative major. Common practice, no source. */
export function circlePlaces(): readonly CirclePlace[] {
  return (['major', 'minor'] as const).flatMap((mode) =>
    ALL_KEYS.filter((key) => key.endsWith(mode)).map((key, at) => {
      const angle = (2 * Math.PI * at) / PLACES;
      return {
        key,
        major: mode === 'major',
        xPercent: 50 + RADIUS[mode] * Math.sin(angle),
        yPercent: 50 - RADIUS[mode] * Math.cos(angle),
      };
    }),
  );
}
