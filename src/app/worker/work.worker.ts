import '../plainChecks.ts';
import * as Comlink from 'comlink';
import { assess } from '../../core/assess.ts';
import { bayRoutes, changedSince } from '../../present/routes.ts';
import { makeAssessor } from './assessor.ts';
import type { Workshop } from './protocol.ts';

const workshop: Workshop = {
  ...makeAssessor(),
  // fetched with the first paper: the sums start without waiting for it
  draw: async (request) => (await import('./draughtsman.ts')).drawFiles(request),
  assessed: (job) => assess(job),
  bayRoutes,
  changedSince,
  train: async (request) => (await import('./trainer.ts')).trainFor(request),
};
Comlink.expose(workshop);
