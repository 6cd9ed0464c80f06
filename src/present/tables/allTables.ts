import { standing } from '../../core/job/standing.ts';
import type { Table } from '../table.ts';
import { asLeftTable } from './asLeft.ts';
import { clustersTable } from './clusters.ts';
import { areasTable, countsTable, lookAgainTable, notLookedAtTable } from './coverage.ts';
import { decidedTable, dispositionsTable, ownLimitsTable } from './dispositions.ts';
import { ellipsoidsTable } from './ellipsoids.ts';
import { enteredReadingsTable, workLogTable } from './entered.ts';
import { estimateLinesTable, hiddenTable, originsTable, ratesTable, totalsTable } from './estimate.ts';
import { exchangeTable } from './exchange.ts';
import { decisionsTable, findingsTable } from './findings.ts';
import { holdsTable } from './holds.ts';
import { leftOverTable } from './leftOver.ts';
import { lockedInTable, suspectsTable } from './lockedIn.ts';
import { lookNextTable } from './lookNext.ts';
import { membersTable } from './members.ts';
import { frozenTable, gatesTable, notPlannedTable, planStatesTable, planStepsTable } from './planSteps.ts';
import { reliefTable } from './relief.ts';
import type { Showing } from './showing.ts';
import { historyTable, issuesTable, manualTable, sourcesTable } from './sources.ts';
import { spliceSizesTable, splicesTable } from './splices.ts';
import { planTable, spreadTable, swingTable } from './spread.ts';
import { casesTable, forcesTable, redundancyTable } from './statics.ts';
import {
  pushesTable,
  roundnessTable,
  setUpsTable,
  straightenChecksTable,
  straighteningTable,
} from './straighten.ts';
import { supplementTable } from './supplement.ts';
import {
  barsTable,
  ledgerTable,
  materialsTable,
  piecesTable,
  repairTakesTable,
  thresholdsTable,
} from './takeoff.ts';
import { readingsTable, shapeTable, targetsTable } from './trammel.ts';
import { weldsTable } from './welds.ts';

/** Every table of a job, in the order of the work. One CSV each; the report prints most of them. */
export const allTables = (showing: Showing): readonly Table[] => {
  const live = standing(showing.job.records);
  return [
    countsTable(showing),
    notLookedAtTable(showing),
    areasTable(showing),
    membersTable(showing),
    clustersTable(showing),
    findingsTable(showing, live.photos),
    decisionsTable(showing),
    lookAgainTable(showing),
    lookNextTable(showing),
    casesTable(showing),
    forcesTable(showing),
    redundancyTable(showing),
    targetsTable(showing),
    readingsTable(showing),
    enteredReadingsTable(showing, live.readings),
    shapeTable(showing),
    ellipsoidsTable(showing),
    swingTable(showing),
    spreadTable(showing),
    planTable(showing),
    holdsTable(showing),
    lockedInTable(showing),
    suspectsTable(showing),
    leftOverTable(showing),
    reliefTable(showing),
    decidedTable(showing),
    dispositionsTable(showing),
    ownLimitsTable(showing),
    straighteningTable(showing),
    setUpsTable(showing),
    pushesTable(showing),
    straightenChecksTable(showing),
    roundnessTable(showing),
    splicesTable(showing),
    spliceSizesTable(showing),
    planStepsTable(showing),
    planStatesTable(showing),
    gatesTable(showing),
    notPlannedTable(showing),
    frozenTable(showing),
    materialsTable(showing),
    piecesTable(showing),
    barsTable(showing),
    repairTakesTable(showing),
    ledgerTable(showing),
    thresholdsTable(showing),
    estimateLinesTable(showing),
    hiddenTable(showing),
    totalsTable(showing),
    originsTable(showing),
    ratesTable(showing),
    exchangeTable(showing, live.manual),
    supplementTable(showing),
    weldsTable(showing, live),
    asLeftTable(showing),
    workLogTable(showing, live.progress),
    manualTable(showing, live.manual),
    sourcesTable(showing),
    issuesTable(showing),
    historyTable(showing),
  ];
};
