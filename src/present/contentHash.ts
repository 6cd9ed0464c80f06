import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Job } from '../core/job/jobSchema.ts';
import { writeJob } from '../core/job/write.ts';

/** SHA-256 of the job as it is written to a file: ties a report to the job it was made from. */
export const contentHash = (job: Job): string => bytesToHex(sha256(utf8ToBytes(writeJob(job))));
