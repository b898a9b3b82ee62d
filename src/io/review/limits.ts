/**
 * The most that a review holds. Far beyond what a teacher writes in an evening, and little enough that no file can fill a
 * device: up to 200 recordings are to fit, and a minute of sound in Opus is half a megabyte.
 */
export const REVIEW_LIMITS = {
  mostFileBytes: 256 * 2 ** 20,
  mostUnpackedBytes: 384 * 2 ** 20,
  mostAttempts: 200,
  mostRemarks: 200,
  mostCorrections: 200,
  mostVoices: 1000,
  mostAssigned: 50,
  mostManifestBytes: 8 * 2 ** 20,
  mostReportBytes: 4 * 2 ** 20,
  /** an hour of Opus, or six minutes of one channel in 16 bits */
  mostSoundBytes: 32 * 2 ** 20,
  mostVoiceBytes: 16 * 2 ** 20,
  /** notes struck, missed and unsure of one attempt; the longest exercise has 114 */
  mostNotes: 2000,
  nameLetters: 200,
  remarkLetters: 4000,
  wordsLetters: 20_000,
} as const;
