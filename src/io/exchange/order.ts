import type { Report, ReportedNote } from '../../engine/index.ts';

/** A note of a report in its place: struck, missed, or not to be told. */
export type PlacedNote =
  | { readonly kind: 'struck'; readonly note: ReportedNote }
  | { readonly kind: 'missed'; readonly note: Report['missed'][number] }
  | { readonly kind: 'unsure'; readonly note: Report['unsure'][number] };

/** Report → every note of it: what was struck in order of time, and what did not sound after the last note of the steps before its own. */
export function inOrder(report: Report): readonly PlacedNote[] {
  const struck: readonly PlacedNote[] = report.notes.map((note) => ({ kind: 'struck', note }));
  const silent = [
    ...report.missed.map((note) => ({ kind: 'missed' as const, note })),
    ...report.unsure.map((note) => ({ kind: 'unsure' as const, note })),
  ].sort((a, b) => a.note.step - b.note.step || a.note.midi - b.note.midi);
  // From the last on, so that of two in one place the earlier step comes first.
  return silent.reduceRight<readonly PlacedNote[]>((placed, one) => {
    const before = placed.findLastIndex(
      ({ kind, note }) => kind === 'struck' && note.step !== null && note.step < one.note.step,
    );
    return placed.toSpliced(before + 1, 0, one);
  }, struck);
}
