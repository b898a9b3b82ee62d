/** Debian's packages of all that `findEngines` looks for. */
export const ENGINE_PACKAGES: readonly string[];

/** The paths of Firefox (and a loudspeaker that nobody hears) and of WebKit (its driver, and a screen that nobody sees); undefined where one is missing. */
export function findEngines():
  | {
      readonly firefox: string;
      readonly loudspeaker: string;
      readonly webKit: string;
      readonly driver: string;
      readonly screen: string;
    }
  | undefined;
