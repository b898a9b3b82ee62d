import type { Estimate, Figure, NotMeasured } from '../types.ts';

export function notMeasured(reason: string): NotMeasured {
  return { notMeasured: reason };
}

export function isMeasured(figure: Figure): figure is Estimate {
  return 'value' in figure;
}
