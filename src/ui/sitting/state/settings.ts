/** When the click of the pulse is heard: never, until the first note of an attempt (to come in by), or all the way. */
export type Click = 'off' | 'count-in' | 'throughout';

/** How somebody wants to be listened to at the piano. */
export interface SittingSettings {
  /** what is not the exercise chosen is over after this much silence, seconds */
  readonly silenceSec: number;
  /** the pulse is seen at the edges of the screen */
  readonly pulse: boolean;
  readonly click: Click;
  /** the verdict is spoken */
  readonly speak: boolean;
  /** null: the system's choice */
  readonly deviceId: string | null;
}

export const STAND_DEFAULTS: SittingSettings = {
  silenceSec: 2.5,
  pulse: true,
  click: 'off',
  speak: false,
  deviceId: null,
};

/** Shortest and longest silence that may be chosen, seconds. */
export const SILENCE_SEC = { least: 1, most: 8, step: 0.5 } as const;

/** A pause of this many beats is still part of the playing. */
const LEAST_BEATS = 1.5;

/** The silence that ends what the exercise does not end: as chosen, but never shorter than a beat and a half at the tempo aimed at. */
export function endingSilenceSec(settings: SittingSettings, targetBpm: number | null): number {
  return Math.max(settings.silenceSec, targetBpm === null ? 0 : (LEAST_BEATS * 60) / targetBpm);
}

export const CLICKS: readonly Click[] = ['off', 'count-in', 'throughout'];

/** What was remembered, whatever it is → settings; what does not fit is as it is at first. */
export function readSittingSettings(kept: unknown): SittingSettings {
  const given: Readonly<Record<string, unknown>> =
    typeof kept === 'object' && kept !== null ? { ...kept } : {};
  const { silenceSec, pulse, click, speak, deviceId } = given;
  const first = STAND_DEFAULTS;
  const fits =
    typeof silenceSec === 'number' && silenceSec >= SILENCE_SEC.least && silenceSec <= SILENCE_SEC.most;
  return {
    silenceSec: fits ? silenceSec : first.silenceSec,
    pulse: typeof pulse === 'boolean' ? pulse : first.pulse,
    click: CLICKS.find((one) => one === click) ?? first.click,
    speak: typeof speak === 'boolean' ? speak : first.speak,
    deviceId: typeof deviceId === 'string' ? deviceId : first.deviceId,
  };
}
