import { createTurns, writeArchive } from '../archive/index.ts';
import type { ArchiveFile } from '../archive/index.ts';
import { checked } from '../check/index.ts';
import { isSoundOfKind } from '../encode/index.ts';
import { FORMAT, FORMAT_VERSION, MANIFEST_V1, REVIEW_LIMITS, withPlainNames } from './manifest.ts';
import { MANIFEST, reportName, soundName, voiceName } from './names.ts';
import type { Review, SoundFile } from './types.ts';
import { checkedReport, checkPlaces, placeOf, ReviewError } from './whole.ts';

/** The kind of file, for saving and sharing. */
const REVIEW_MIME = 'application/zip';

/**
 * A review → its file: a zip with manifest.json (review.schema.json), the reports, and the sounds as they are. What it
 * writes, `readReview` reads: rejects with ReviewError where something is too long, too large or not in order. The page goes on
 * meanwhile; the same review gives the same bytes wherever it is written.
 */
export async function writeReview(review: Review): Promise<Blob> {
  checkPlaces(review);
  const turn = createTurns();
  const files: ArchiveFile[] = [];
  let voices = 0;
  const put = (name: string, { bytes, mime }: SoundFile, mostBytes: number): string => {
    if (bytes.length > mostBytes) throw new ReviewError({ trouble: 'review-sound-too-long' });
    if (!isSoundOfKind(bytes, mime))
      throw new RangeError(`mime=${mime} is not what the bytes of ${name} are.`);
    files.push({ name, bytes, packing: 'store' });
    return name;
  };
  const attempts = [];
  for (const [index, { report, sound, remarks, ...rest }] of review.attempts.entries()) {
    const number = index + 1;
    files.push(jsonFile(reportName(number), checkedReport(jsonOf(report), reportName(number))));
    attempts.push({
      ...rest,
      report: reportName(number),
      sound: sound === null ? null : put(soundName(number, sound), sound, REVIEW_LIMITS.mostSoundBytes),
      remarks: remarks.map((remark) => ({
        ...remark,
        voice:
          remark.voice === null
            ? null
            : put(voiceName(++voices, remark.voice), remark.voice, REVIEW_LIMITS.mostVoiceBytes),
      })),
    });
    await turn();
  }
  const manifest = checked(
    MANIFEST_V1,
    jsonOf({ format: FORMAT, version: FORMAT_VERSION, ...review, attempts }),
  );
  if ('issue' in manifest)
    throw new ReviewError({
      trouble: 'review-unwritable',
      place: placeOf(manifest.issue),
      detail: manifest.issue.message,
    });
  const first = jsonFile(MANIFEST, withPlainNames(manifest.value));
  const blob = await writeArchive([first, ...files], REVIEW_MIME);
  if (blob.size > REVIEW_LIMITS.mostFileBytes) throw new ReviewError({ trouble: 'review-too-large' });
  return blob;
}

/** As JSON would hold it: what is `undefined` goes, so that checking sees what a reader will see. */
const jsonOf = (value: unknown): unknown => JSON.parse(JSON.stringify(value)) as unknown;

function jsonFile(name: string, value: unknown): ArchiveFile {
  return { name, bytes: new TextEncoder().encode(JSON.stringify(value)), packing: 'deflate' };
}
