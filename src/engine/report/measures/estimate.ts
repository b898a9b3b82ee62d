import type { Estimate, NotMeasured } from '../types.ts';

export type Figure = Estimate | NotMeasured;

export function notMeasured(reason: string): NotMeasured {
  return { notMeasured: reason };
}

export function isMeasured(figure: Figure): figure is Estimate {
  return 'value' in figure;
}
