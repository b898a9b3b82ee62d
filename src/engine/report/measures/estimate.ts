import { tellNotice } from '../../notices/index.ts';
import type { Notice } from '../../notices/index.ts';
import type { Estimate, Figure, NotMeasured } from '../types.ts';

/** Why a figure could not be had, as values and, for readers of the JSON, in plain English. */
export function notMeasured(notice: Notice): NotMeasured {
  return { notMeasured: tellNotice(notice), notice };
}

export function isMeasured(figure: Figure): figure is Estimate {
  return 'value' in figure;
}
