import type { AttemptRecord } from './assess-attempt.ts';

export type Records = readonly AttemptRecord[];

export const sum = (records: Records, of: (record: AttemptRecord) => number): number =>
  records.reduce((all, record) => all + of(record), 0);
export const percent = (part: number, whole: number, digits = 1): string =>
  whole === 0 ? '–' : `${((100 * part) / whole).toFixed(digits)} %`;

/** Of notes A2–C7 heard within ±50 ms, heard − true. */
export function onsetErrorsMs(records: Records): readonly number[] {
  return records
    .flatMap(({ notes }) => notes)
    .filter(({ midi }) => midi >= 45 && midi <= 96)
    .flatMap(({ errorMs }) => (errorMs === null ? [] : [errorMs]));
}

export const evennessErrors = (records: Records): readonly number[] =>
  records.flatMap(({ measures }) =>
    measures === null || measures.evennessPp === null ? [] : [Math.abs(measures.evennessPp)],
  );
export const crossingErrors = (records: Records): readonly number[] =>
  records.flatMap(({ measures }) => measures?.crossingsMs.map(Math.abs) ?? []);
export const tuningErrors = (records: Records): readonly number[] =>
  records.flatMap(({ tuningCents }) => (tuningCents === null ? [] : [Math.abs(tuningCents)]));

/** Right notes that the report does not call right. */
export const doubted = ({ verdicts }: AttemptRecord): number =>
  verdicts.rightCalledWrong + verdicts.rightCalledMissed;
