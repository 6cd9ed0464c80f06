import { assess } from '../../core/assess.ts';
import { crash, exerciseFrom } from '../../core/practice/crash.ts';
import { planJob } from '../../core/practice/planJob.ts';
import type { Trained, TrainRequest } from './protocol.ts';

/** Works out what practice asks for. Same request, same answer. */
export const trainFor = (request: TrainRequest): Trained => {
  switch (request.kind) {
    case 'crash':
      return crash(request.model, request.ask);
    case 'findings':
      return exerciseFrom(request.model, request.findings, request.ask, request.blow);
    case 'plan': {
      const job = planJob(request.model, request.seed);
      return job ? { kind: 'planned', job, assessment: assess(job) } : { kind: 'movesFreely', clusters: [] };
    }
    default:
      return request satisfies never;
  }
};
