import '../plainChecks.ts';
import * as Comlink from 'comlink';
import { reportFiles } from '../../present/report.ts';
import type { Draughtsman } from './protocol.ts';

const draughtsman: Draughtsman = { draw: reportFiles };
Comlink.expose(draughtsman);
