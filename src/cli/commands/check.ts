import { assess } from '../../core/assess.ts';
import { issuesTable } from '../../present/tables/sources.ts';
import { readJobFile } from '../files.ts';
import { printTable } from '../print.ts';
import type { Command } from './command.ts';

/** What is wrong or odd in a job or model. A file that opens exits 0, however odd it is. */
export const check: Command = {
  name: 'check',
  takes: [],
  run: (file) => {
    const read = readJobFile(file);
    if (!read.ok) return read;
    const job = read.value;
    const assessment = assess(job);
    const { truss } = assessment;
    const found = [...truss.issues, ...truss.odd, ...assessment.coverage.issues, ...assessment.issues];
    const counts = `${file}: ${job.name}. ${truss.clusters.length} clusters, ${truss.members.length} members, ${truss.bays.length} bays, ${job.records.length} records.`;
    const table = issuesTable({ job, assessment, units: 'inFraction' });
    return {
      ok: true,
      text: `${counts}\n\n${printTable(table)}`,
      json: {
        name: job.name,
        clusters: truss.clusters.length,
        members: truss.members.length,
        bays: truss.bays.length,
        records: job.records.length,
        issues: [...read.issues, ...found],
      },
      issues: read.issues,
    };
  },
};
