import { describe, expect, it } from 'vitest';
import {
  endingSilenceSec,
  readSittingSettings,
  STAND_DEFAULTS,
} from '../../../src/ui/sitting/state/settings.ts';

describe('the silence that ends an attempt', () => {
  it('is 2.5 s where nothing else was chosen', () => {
    expect(endingSilenceSec(STAND_DEFAULTS, 80)).toBe(2.5);
    expect(endingSilenceSec(STAND_DEFAULTS, null)).toBe(2.5);
  });

  it('is never shorter than a beat and a half of the tempo aimed at', () => {
    expect(endingSilenceSec(STAND_DEFAULTS, 30)).toBe(3);
    expect(endingSilenceSec({ ...STAND_DEFAULTS, silenceSec: 1 }, 60)).toBe(1.5);
    expect(endingSilenceSec({ ...STAND_DEFAULTS, silenceSec: 1 }, 120)).toBe(1);
  });
});

describe('remembered settings', () => {
  it('come back as they were', () => {
    const kept = { silenceSec: 4, pulse: false, click: 'throughout', speak: true, deviceId: 'a' } as const;
    expect(readSittingSettings(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
  });

  it.each([
    ['nothing', null],
    ['a text', 'x'],
    ['a list', [1]],
    ['wrong kinds', { silenceSec: '4', pulse: 1, click: 'loud', speak: null, deviceId: 7 }],
    ['a silence out of bounds', { silenceSec: 900 }],
    ['no number', { silenceSec: Number.NaN }],
  ])('that are %s are as at first', (_, kept) => {
    expect(readSittingSettings(kept)).toEqual(STAND_DEFAULTS);
  });
});
