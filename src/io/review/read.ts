import * as v from 'valibot';
import { ArchiveError, openArchive } from '../archive/index.ts';
import type { ArchiveMember } from '../archive/index.ts';
import { checked, parseJson } from '../check/index.ts';
import { isSoundOfKind, mimeOf } from '../encode/index.ts';
import { FORMAT_VERSION, MANIFEST_HEAD, MANIFEST_V1, REVIEW_LIMITS, withPlainNames } from './manifest.ts';
import type { Manifest } from './manifest.ts';
import { MANIFEST, REPORT_NAME, SOUND_NAME, VOICE_NAME } from './names.ts';
import type { Review, SoundFile } from './types.ts';
import { checkedReport, checkPlaces, placeOf, refusal, ReviewError } from './whole.ts';

const { mostFileBytes, mostUnpackedBytes, mostSoundBytes, mostVoiceBytes, mostReportBytes } = REVIEW_LIMITS;

/** Which files a review may hold, and the most bytes of each, unpacked. */
const FILES: readonly { readonly name: RegExp; readonly mostBytes: number }[] = [
  { name: /^manifest\.json$/, mostBytes: REVIEW_LIMITS.mostManifestBytes },
  { name: REPORT_NAME, mostBytes: mostReportBytes },
  { name: SOUND_NAME, mostBytes: mostSoundBytes },
  { name: VOICE_NAME, mostBytes: mostVoiceBytes },
];

/**
 * A file from outside → the review in it, all of it or none. Throws ReviewError, which says why and what to do; the file
 * may be anything, made by anybody.
 */
export async function readReview(file: Blob): Promise<Review> {
  const members = await membersOf(file);
  const manifest = await manifestOf(members);
  const review = await assembled(manifest, members);
  checkPlaces(review);
  return review;
}

type Members = ReadonlyMap<string, ArchiveMember>;

async function membersOf(file: Blob): Promise<Members> {
  const members = await archived(() =>
    openArchive(file, {
      mostFileBytes,
      mostUnpackedBytes,
      mostMemberBytes: mostSoundBytes,
      mostMembers: 1 + 2 * REVIEW_LIMITS.mostAttempts + REVIEW_LIMITS.mostVoices,
    }),
  );
  if (!members.some(({ name }) => name === MANIFEST)) {
    throw new ReviewError({ trouble: 'no-review' });
  }
  for (const { name, sizeBytes } of members) {
    const known = FILES.find((one) => one.name.test(name));
    if (known === undefined) throw refusal({ trouble: 'review-holds-other' });
    if (sizeBytes > known.mostBytes) throw new ReviewError({ trouble: 'review-part-too-large', name });
  }
  return new Map(members.map((one) => [one.name, one]));
}

async function manifestOf(members: Members): Promise<Manifest> {
  const value = parseJson(await bytesOf(members, MANIFEST));
  const head = v.safeParse(MANIFEST_HEAD, value);
  if (!head.success) throw new ReviewError({ trouble: 'no-review' });
  if (head.output.version > FORMAT_VERSION) {
    throw new ReviewError({ trouble: 'review-newer' });
  }
  const manifest = checked(MANIFEST_V1, value);
  if ('issue' in manifest) throw refusal({ trouble: 'review-manifest', place: placeOf(manifest.issue) });
  checkNamed(manifest.value, members);
  return withPlainNames(manifest.value);
}

/** Every file is named once, and every file that is named is there. */
function checkNamed({ attempts }: Manifest, members: Members): void {
  const named = [
    MANIFEST,
    ...attempts.flatMap(({ report, sound, remarks }) => [report, sound, ...remarks.map((one) => one.voice)]),
  ].filter((name) => name !== null);
  if (new Set(named).size !== named.length) throw refusal({ trouble: 'review-names-twice' });
  if (named.some((name) => !members.has(name))) throw refusal({ trouble: 'review-misses-file' });
  if (named.length !== members.size) throw refusal({ trouble: 'review-holds-other' });
}

async function assembled(manifest: Manifest, members: Members): Promise<Review> {
  const { format, version, ...said } = manifest;
  const attempts: Review['attempts'][number][] = [];
  // One after the other: a file is held in memory once, packed and unpacked.
  for (const sent of manifest.attempts) {
    const { report: reportName, sound, remarks, ...rest } = sent;
    const report = checkedReport(parseJson(await bytesOf(members, reportName)), reportName);
    const spoken: Review['attempts'][number]['remarks'][number][] = [];
    for (const remark of remarks) {
      spoken.push({ ...remark, voice: await soundOf(members, remark.voice) });
    }
    attempts.push({ ...rest, report, sound: await soundOf(members, sound), remarks: spoken });
  }
  return { ...said, attempts };
}

async function soundOf(members: Members, name: string | null): Promise<SoundFile | null> {
  if (name === null) return null;
  const mime = mimeOf(name);
  const bytes = await bytesOf(members, name);
  if (!isSoundOfKind(bytes, mime)) throw refusal({ trouble: 'review-no-sound', name });
  return { bytes, mime };
}

async function bytesOf(members: Members, name: string): Promise<Uint8Array<ArrayBuffer>> {
  const member = members.get(name);
  if (member === undefined) throw refusal({ trouble: 'review-misses-file' });
  return archived(() => member.read());
}

/** What the archive says of itself, as said of a review. */
async function archived<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (cause) {
    if (!(cause instanceof ArchiveError)) throw cause;
    throw new ReviewError({ trouble: 'review-unopened', because: cause.trouble });
  }
}
