import '../plainChecks.ts';
import * as Comlink from 'comlink';
import { paperFile, reportFiles } from '../../present/report.ts';
import type { Draughtsman } from './protocol.ts';

const draughtsman: Draughtsman = { draw: reportFiles, paper: paperFile };
Comlink.expose(draughtsman);
