import type { Stage } from '../core/assessment.ts';
import { type Table, withColumns } from '../present/table.ts';
import { clustersTable } from '../present/tables/clusters.ts';
import { areasTable, countsTable, lookAgainTable, notLookedAtTable } from '../present/tables/coverage.ts';
import { decidedTable, dispositionsTable, ownLimitsTable } from '../present/tables/dispositions.ts';
import { ellipsoidsTable } from '../present/tables/ellipsoids.ts';
import {
  estimateLinesTable,
  hiddenTable,
  originsTable,
  ratesTable,
  totalsTable,
} from '../present/tables/estimate.ts';
import { decisionsTable, findingsTable } from '../present/tables/findings.ts';
import { holdsTable } from '../present/tables/holds.ts';
import { leftOverTable } from '../present/tables/leftOver.ts';
import { lockedInTable, suspectsTable } from '../present/tables/lockedIn.ts';
import { lookNextOf, lookNextTable } from '../present/tables/lookNext.ts';
import { membersTable } from '../present/tables/members.ts';
import {
  frozenTable,
  gatesTable,
  notPlannedTable,
  planStatesTable,
  planStepsTable,
} from '../present/tables/planSteps.ts';
import { reliefTable } from '../present/tables/relief.ts';
import type { Showing } from '../present/tables/showing.ts';
import { spliceSizesTable, splicesTable } from '../present/tables/splices.ts';
import { planTable, spreadTable, swingTable } from '../present/tables/spread.ts';
import { casesTable, forcesTable, redundancyTable } from '../present/tables/statics.ts';
import {
  pushesTable,
  roundnessTable,
  setUpsTable,
  straightenChecksTable,
  straighteningTable,
} from '../present/tables/straighten.ts';
import {
  barsTable,
  ledgerTable,
  materialsTable,
  piecesTable,
  repairTakesTable,
  thresholdsTable,
} from '../present/tables/takeoff.ts';
import { readingsTable, shapeTable, targetsTable } from '../present/tables/trammel.ts';

/** Tools, materials, cautions and reasons of each step stand in plan-steps.csv and on the work cards. */
const planColumns = ['place', 'deed', 'where', 'before', 'after', 'done'];

/** The tables that show one stage in a terminal; the screen and the report show the same ones. */
export const stageTables = {
  truss: (s) => [membersTable(s), clustersTable(s)],
  coverage: (s) => [
    countsTable(s),
    notLookedAtTable(s),
    lookAgainTable(s),
    areasTable(s),
    findingsTable(s),
    decisionsTable(s),
  ],
  statics: (s) => [casesTable(s), forcesTable(s), redundancyTable(s)],
  trammel: (s) => [
    targetsTable(s),
    readingsTable(s),
    shapeTable(s),
    ellipsoidsTable(s),
    swingTable(s),
    spreadTable(s),
    planTable(s),
    holdsTable(s),
  ],
  lockedIn: (s) => [lockedInTable(s), suspectsTable(s), leftOverTable(s)],
  loadPath: (s) => [
    lookNextTable(s),
    ...Object.keys(s.assessment.loadPath.byMember).map((member) => lookNextOf(s, member)),
  ],
  relief: (s) => [reliefTable(s)],
  disposition: (s) => [decidedTable(s), dispositionsTable(s), ownLimitsTable(s)],
  straighten: (s) => [
    straighteningTable(s),
    setUpsTable(s),
    pushesTable(s),
    straightenChecksTable(s),
    roundnessTable(s),
  ],
  splice: (s) => [splicesTable(s), spliceSizesTable(s)],
  plan: (s) => [
    withColumns(planStepsTable(s), planColumns),
    planStatesTable(s),
    gatesTable(s),
    notPlannedTable(s),
    frozenTable(s),
  ],
  takeoff: (s) => [
    materialsTable(s),
    piecesTable(s),
    barsTable(s),
    repairTakesTable(s),
    ledgerTable(s),
    thresholdsTable(s),
  ],
  estimate: (s) => [
    countsTable(s),
    estimateLinesTable(s),
    hiddenTable(s),
    totalsTable(s),
    originsTable(s),
    ratesTable(s),
  ],
} as const satisfies Record<Stage, (showing: Showing) => readonly Table[]>;
