import type { ExerciseChoice, Report } from '../../engine/index.ts';
import type { Devices } from './devices.ts';
import type { Journal } from './journal.svelte.ts';
import type { Sound } from './sound.ts';

/** An attempt as it was kept. */
export interface FoundAgain {
  /** without channels where its sound is not kept any more */
  readonly sound: Sound;
  /** null: it is to be listened to again */
  readonly report: Report | null;
  readonly choice: ExerciseChoice | null;
}

/** The name of an attempt → what the journal has of it, or the files that were opened here; null: neither has it. */
export async function foundAgain(
  id: string,
  journal: Journal,
  { opened, decode }: Pick<Devices, 'opened' | 'decode'>,
): Promise<FoundAgain | null> {
  await journal.load();
  const kept = await journal.open(id);
  if (kept !== null) {
    const { entry, report, sound } = kept;
    const silent: Sound = {
      name: entry.name,
      remarks: entry.remarks,
      channels: [],
      sampleRateHz: report?.audio.sampleRateHz ?? 0,
      recordedHere: true,
    };
    return { sound: sound ?? silent, report, choice: entry.choice };
  }
  const file = (await opened?.read(id)) ?? null;
  if (file === null) return null;
  const decoded = await decode(await file.file.arrayBuffer(), file.name);
  const { name, report, choice } = file;
  return { sound: { ...decoded, name, recordedHere: false }, report, choice };
}
