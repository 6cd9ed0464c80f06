import '../plainChecks.ts';
import * as Comlink from 'comlink';
import { bayRoutes, changedSince } from '../../present/routes.ts';
import type { Comparer } from './compare.ts';

const comparer: Comparer = { bayRoutes, changedSince };
Comlink.expose(comparer);
