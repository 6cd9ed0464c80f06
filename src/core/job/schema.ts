import * as z from 'zod/mini';
import { jobSchema } from './jobSchema.ts';
import { modelSchema } from './modelSchema.ts';

/** Every result of a job, by stage. The fields of each stage are the types in `core/<stage>/result.ts`. */
const stage = z.looseObject({
  issues: z.array(
    z.looseObject({
      code: z.string(),
      at: z.string(),
      facts: z.record(z.string(), z.unknown()),
      mend: z.string(),
    }),
  ),
});
const assessmentSchema = z.looseObject({
  truss: stage,
  coverage: stage,
  statics: z.looseObject({ ...stage.shape, kind: z.enum(['stands', 'movesFreely']) }),
  trammel: stage,
  lockedIn: z.looseObject({ ...stage.shape, kind: z.enum(['worked', 'nothingMeasured', 'movesFreely']) }),
  loadPath: z.looseObject({ ...stage.shape, kind: z.enum(['worked', 'movesFreely']) }),
  relief: z.looseObject({ ...stage.shape, kind: z.enum(['ranked', 'notRanked', 'movesFreely']) }),
  disposition: stage,
  straighten: stage,
  splice: stage,
  plan: stage,
  takeoff: stage,
  estimate: stage,
  ...stage.shape,
});

const schemas = { job: jobSchema, model: modelSchema, assessment: assessmentSchema } as const;
export const schemaNames = ['job', 'model', 'assessment'] as const;
export type SchemaName = keyof typeof schemas;

/** The shape of a document as JSON Schema, draft 2020-12. */
export const jsonSchema = (name: SchemaName): object => z.toJSONSchema(schemas[name]);
