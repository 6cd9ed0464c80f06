import '../plainChecks.ts';
import * as Comlink from 'comlink';
import { makeAssessor } from './assessor.ts';

Comlink.expose(makeAssessor());
