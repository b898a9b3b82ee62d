import { zipSync, type Zippable } from 'fflate';
import * as v from 'valibot';
import { ReviewError } from './errors.ts';
import { REVIEW_LIMITS } from './limits.ts';
import { FORMAT, FORMAT_VERSION, MANIFEST_V1 } from './manifest.ts';
import { MANIFEST, reportName, soundName, voiceName } from './names.ts';
import { isSoundOfKind } from './sounds.ts';
import type { Review, SoundFile } from './types.ts';
import { checkedReport, checkPlaces, placeOf } from './whole.ts';

/** The kind of file, for saving and sharing. */
const REVIEW_MIME = 'application/zip';

/** 1 January 1980, the first day that a zip can name: the same review gives the same bytes wherever it is written. */
const NO_TIME = '1980-01-01T00:00:00';

/**
 * A review → its file: a zip with manifest.json (review.schema.json), the reports, and the sounds as they are. What it
 * writes, `readReview` reads: throws ReviewError where something is too long, too large or not in order.
 */
export function writeReview(review: Review): Blob {
  checkPlaces(review);
  const files: Zippable = {};
  let voices = 0;
  const put = (name: string, { bytes, mime }: SoundFile, mostBytes: number): string => {
    if (bytes.length > mostBytes)
      throw new ReviewError(
        'not-writable',
        'A sound is too long for a review. Cut it, or send the review without it.',
      );
    if (!isSoundOfKind(bytes, mime))
      throw new RangeError(`mime=${mime} is not what the bytes of ${name} are.`);
    files[name] = [bytes, { level: 0 }];
    return name;
  };
  const attempts = review.attempts.map(({ report, sound, remarks, ...rest }, index) => {
    const number = index + 1;
    files[reportName(number)] = json(checkedReport(jsonOf(report), reportName(number)));
    return {
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
    };
  });
  const manifest = v.safeParse(
    MANIFEST_V1,
    jsonOf({ format: FORMAT, version: FORMAT_VERSION, ...review, attempts }),
  );
  if (!manifest.success) {
    const { message } = manifest.issues[0];
    throw new ReviewError(
      'not-writable',
      `This review cannot be written: ${placeOf(manifest.issues[0])}: ${message}`,
    );
  }
  const file = zipSync({ [MANIFEST]: json(manifest.output), ...files }, { level: 6, mtime: NO_TIME });
  const blob = new Blob([file], { type: REVIEW_MIME });
  if (blob.size > REVIEW_LIMITS.mostFileBytes)
    throw new ReviewError(
      'not-writable',
      'This review is too large for one file. Leave out the sound of some attempts.',
    );
  return blob;
}

/** As JSON would hold it: what is `undefined` goes, so that checking sees what a reader will see. */
const jsonOf = (value: unknown): unknown => JSON.parse(JSON.stringify(value)) as unknown;

const json = (value: unknown): Uint8Array<ArrayBuffer> => new TextEncoder().encode(JSON.stringify(value));
