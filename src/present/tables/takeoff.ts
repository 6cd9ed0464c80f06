import type {
  Bar,
  LedgerRow,
  RepairTakes,
  StockLine,
  StockPiece,
  ThresholdHeld,
} from '../../core/estimate/result.ts';
import { lengthUnit, showBareLength, showFigure, showTube } from '../show.ts';
import { type Column, type Table, tableOf } from '../table.ts';
import { restsOn } from '../words/basis.ts';
import {
  lineOriginWords,
  nestingWords,
  stockName,
  stockPartWords,
  thresholdNames,
  thresholdWords,
  topicWords,
} from '../words/estimate.ts';
import { listWords } from '../words/names.ts';
import { methodNames } from '../words/splice.ts';
import { figureColumn } from './figureColumn.ts';
import { rawLength, type Showing } from './showing.ts';

interface PieceRow {
  readonly line: StockLine;
  readonly piece: StockPiece;
}

/** Every piece to be cut: net length, what angled ends add, kerf. */
export const piecesTable = ({ assessment: { takeoff }, units }: Showing): Table => {
  const length = (id: string, title: string, of: (p: StockPiece) => number): Column<PieceRow> => ({
    id,
    title,
    unit: lengthUnit(units),
    align: 'right',
    text: ({ piece }) => showBareLength(of(piece), units),
    raw: ({ piece }) => rawLength(of(piece), units),
  });
  return tableOf<PieceRow>(
    {
      name: 'tube-pieces',
      title: 'Tube to cut',
      note: 'For ordering. Sections are cut to the opening measured after spreading.',
      empty: 'No decided repair takes tube, or none is designed yet.',
      idOf: ({ piece }) => piece.member,
      columns: [
        { id: 'tube', title: 'Tube', text: ({ line }) => stockName(line, units) },
        { id: 'member', title: 'For', text: ({ piece }) => piece.member },
        { id: 'part', title: 'Part', text: ({ piece }) => stockPartWords(piece.part) },
        length('net', 'Net', (p) => p.netIn.value),
        length('scarf', 'Angled ends add', (p) => p.scarfIn.value),
        length('kerf', 'Saw', (p) => p.kerfIn.value),
        length('takes', 'Takes', (p) => p.takesIn.value),
        { id: 'basis', title: 'Net rests on', text: ({ piece }) => restsOn(piece.netIn) },
      ],
    },
    takeoff.stock.flatMap((line) => line.pieces.map((piece) => ({ line, piece }))),
  );
};

interface BarRow {
  readonly line: StockLine;
  readonly bar: Bar;
  readonly place: number;
}

/** Pieces nested on bought lengths. */
export const barsTable = ({ assessment: { takeoff }, units }: Showing): Table =>
  tableOf<BarRow>(
    {
      name: 'stock-cuts',
      title: 'Cuts from stock lengths',
      note: takeoff.stock.map((line) => `${stockName(line, units)}: ${nestingWords(line)}`).join('. '),
      empty: 'No tube is to be cut.',
      columns: [
        { id: 'tube', title: 'Tube', text: ({ line }) => stockName(line, units) },
        {
          id: 'bar',
          title: 'No.',
          align: 'right',
          text: ({ place }) => String(place),
          raw: ({ place }) => place,
        },
        {
          id: 'stock',
          title: 'Bought length',
          unit: lengthUnit(units),
          align: 'right',
          text: ({ line }) => showBareLength(line.stockIn.value, units),
          raw: ({ line }) => rawLength(line.stockIn.value, units),
        },
        { id: 'pieces', title: 'Pieces, in this order', text: ({ bar }) => bar.pieces.join(', ') },
        {
          id: 'left',
          title: 'Left over',
          unit: lengthUnit(units),
          align: 'right',
          text: ({ bar }) => showBareLength(bar.leftIn, units),
          raw: ({ bar }) => rawLength(bar.leftIn, units),
        },
        { id: 'basis', title: 'Bought length rests on', text: ({ line }) => restsOn(line.stockIn) },
      ],
    },
    takeoff.stock.flatMap((line) => line.bars.map((bar, k) => ({ line, bar, place: k + 1 }))),
  );

/** Rosettes, weld, rod and primer of each repair. */
export const repairTakesTable = ({ assessment: { takeoff }, units }: Showing): Table =>
  tableOf<RepairTakes>(
    {
      name: 'repair-takes',
      title: 'What each repair takes besides tube',
      empty: 'No repair is decided that takes anything.',
      idOf: ({ member }) => member,
      columns: [
        { id: 'member', title: 'Repair', text: ({ member }) => member },
        {
          id: 'method',
          title: 'Method',
          text: ({ method }) => (method ? methodNames[method] : 'not designed yet'),
        },
        figureColumn<RepairTakes>('rosettes', 'Rosettes', 'count', units, (r) => r.rosettes),
        figureColumn<RepairTakes>('weld', 'Weld', 'in', units, (r) => r.weldIn),
        figureColumn<RepairTakes>('rod', 'Rod', 'lb', units, (r) => r.rodLb),
        figureColumn<RepairTakes>('primer', 'Primer', 'in2', units, (r) => r.primerIn2),
        { id: 'origin', title: 'Origin', text: ({ origin }) => lineOriginWords[origin] },
      ],
    },
    takeoff.repairs,
  );

/** Weight added and its moment, row by row, and the sum. */
export const ledgerTable = ({ assessment: { takeoff }, units }: Showing): Table => {
  const { ledger } = takeoff;
  return tableOf<LedgerRow>(
    {
      name: 'weight-ledger',
      title: 'Weight and moment ledger',
      note: [
        `Sum: ${showFigure(ledger.addedLb, units)}, ${showFigure(ledger.momentLbIn, units)}.`,
        ledger.shiftIn
          ? `Centre of gravity moves ${showFigure(ledger.shiftIn, units)} (positive aft).`
          : 'No shift told: empty weight and its station are not given.',
        ...(ledger.notKnown.length > 0 ? [`Not known yet: ${listWords(ledger.notKnown)}.`] : []),
        'Paint, fabric and primer usually outweigh sleeves and are not counted. Small changes add up over the years.',
      ].join(' '),
      empty: 'No repair with a known change of weight.',
      idOf: ({ member }) => member,
      columns: [
        { id: 'member', title: 'Repair', text: ({ member }) => member },
        figureColumn<LedgerRow>('added', 'Added', 'lb', units, (r) => r.addedLb),
        figureColumn<LedgerRow>('arm', 'Station', 'in', units, (r) => r.armIn),
        figureColumn<LedgerRow>('moment', 'Moment', 'lb-in', units, (r) => r.momentLbIn),
        { id: 'basis', title: 'Rests on', text: (r) => restsOn(r.addedLb) },
      ],
    },
    ledger.rows,
  );
};

/** The sums against what is published as a negligible change. Never that weighing is not needed. */
export const thresholdsTable = ({ assessment: { takeoff }, units }: Showing): Table =>
  tableOf<ThresholdHeld>(
    {
      name: 'weight-thresholds',
      title: 'Weight change against published thresholds',
      note: "The type's own data come first, and a person entitled to decides.",
      empty: 'No threshold is loaded.',
      columns: [
        { id: 'rule', title: 'Threshold', text: ({ rule }) => thresholdNames[rule] ?? rule },
        {
          id: 'value',
          title: 'Sum',
          align: 'right',
          text: ({ value }) => (value ? showFigure(value, units) : 'not told'),
        },
        {
          id: 'limit',
          title: 'Threshold is',
          align: 'right',
          text: ({ limit }) => (limit ? showFigure(limit, units) : 'none loaded'),
        },
        { id: 'says', title: 'Answer', text: ({ says }) => thresholdWords[says] },
        {
          id: 'missing',
          title: 'Missing',
          text: ({ missing }) => missing.map((m) => topicWords[m] ?? m).join(', '),
        },
        { id: 'source', title: 'Source', text: ({ limit }) => (limit ? limit.basis.ref : '') },
      ],
    },
    takeoff.ledger.thresholds,
  );

/** What to buy, in one list. */
export const materialsTable = ({ assessment: { takeoff }, units }: Showing): Table =>
  tableOf<StockLine>(
    {
      name: 'materials',
      title: 'Tube to buy',
      empty: 'No tube is to be bought.',
      columns: [
        { id: 'tube', title: 'Tube', text: ({ tube }) => showTube(tube, units) },
        { id: 'material', title: 'Material', text: ({ material }) => material },
        {
          id: 'lengths',
          title: 'Lengths',
          align: 'right',
          text: ({ bars }) => String(bars.length),
          raw: ({ bars }) => bars.length,
        },
        figureColumn<StockLine>('stock', 'Of', 'in', units, (l) => l.stockIn),
        figureColumn<StockLine>('bought', 'In all', 'in', units, (l) => l.boughtIn),
        figureColumn<StockLine>('waste', 'Waste', 'in', units, (l) => l.wasteIn),
        { id: 'nesting', title: 'Nested', text: nestingWords },
        { id: 'tooLong', title: 'Longer than stock', text: ({ tooLong }) => tooLong.join(', ') },
      ],
    },
    takeoff.stock,
  );
