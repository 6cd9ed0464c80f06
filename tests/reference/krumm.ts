import type { Published } from './network.ts';

/**
 * Distance networks of textbooks with their published answers.
 *
 * Source: Krumm, Geodetic Network Adjustment Examples, Geodätisches Institut, Universität Stuttgart, rev. 3.5 (2020), as
 * `.dat` (input) and `.adj` (his printed answers) in GNU Gama 2.24, tests/krumm/input. Read in a copy of those files that
 * another public project keeps unchanged (tests/data/krumm); neither the printed document nor the books were seen.
 */
export interface Answered extends Published {
  readonly name: string;
  /** Adjusted places as printed, metres. */
  readonly places: Readonly<Record<string, readonly number[]>>;
  /** Standard deviations of them as printed, centimetres; a posteriori. None for a net left free. */
  readonly stdCm: Readonly<Record<string, readonly number[]>>;
}

const lines = (table: string, std: number): Published['lines'] =>
  table
    .trim()
    .split(/\s*;\s*/)
    .map((row) => {
      const [a, b, d, s] = row.split(/\s+/);
      return [a!, b!, Number(d), Number(s ?? 1) * std] as const;
    });

/** Ghilani, Adjustment Computations, 5th ed. (2010), example 14.5, p. 251. */
const ghilani: Answered = {
  name: 'Ghilani 14.5',
  unit: 0.01,
  at: {
    Badger: [2410000, 390000],
    Bucky: [2411820, 386881.222],
    Wisconsin: [2415776.819, 391043.461],
    Campus: [2416892.67, 387603.45],
  },
  lines: lines(
    `Badger Wisconsin 5870.302; Badger Campus 7297.588; Wisconsin Campus 3616.434; Wisconsin Bucky 5742.878;
     Campus Bucky 5123.76`,
    0.01,
  ),
  control: ['Badger', 'Bucky'],
  places: { Wisconsin: [2415776.9044, 391043.2945], Campus: [2416892.6955, 387603.2551] },
  stdCm: { Wisconsin: [14.879, 22.061], Campus: [10.378, 27.054] },
};

/** Benning, Statistik in Geodäsie, Geoinformation und Bauwesen (2011), example 8-2, p. 256. */
const benning: Answered = {
  name: 'Benning 8-2',
  unit: 0.01,
  at: { 1: [0, 1000], 2: [1000, 1000], 3: [0, 0], 4: [1000, 0] },
  lines: lines('1 3 1000.02; 1 4 1414.2; 2 3 1414.24; 2 4 999.98; 3 4 1000', 0.01),
  control: ['1', '2'],
  places: { 3: [-0.0096, -0.0226], 4: [999.993, 0.0174] },
  stdCm: { 3: [0.901, 0.637], 4: [0.901, 0.637] },
};

/** Strang & Borre, Linear Algebra, Geodesy, and GPS (1997), example 12.4, p. 411, left free. */
const strangBorre: Answered = {
  name: 'Strang & Borre 12.4',
  unit: 0.01,
  at: { P: [170.71, 170.71], 1: [170.71, 270.71], 2: [100, 100], 3: [241.42, 100] },
  lines: lines('1 P 100.01; 2 P 100.02; 3 P 100.03; 1 2 184.785; 2 3 141.44; 1 3 184.805', 0.01),
  control: [],
  places: {
    P: [170.7123, 170.7185],
    1: [170.7032, 270.7213],
    2: [99.9912, 99.9971],
    3: [241.4333, 99.983],
  },
  stdCm: {},
};

/** Weiss et al., Detection of erroneous values in the measurement of local geodetic networks, Acta Montan. Slovaca 15 (2010) 62. */
const weiss: Answered = {
  name: 'Weiss et al. 2010',
  unit: 0.01,
  at: {
    1: [4506.299, 9001.123],
    2: [2798.622, 9502.49],
    3: [3803.973, 9894.233],
    4: [3299.98, 9100.838],
    5: [3697.824, 9400.545],
    6: [3080.37, 9775.9],
    7: [4393.265, 9842.503],
    8: [4904.569, 9413.376],
    9: [4251.061, 9546.226],
  },
  lines: lines(
    `4 6 709.927 1.30384048104053; 2 6 392.55 0.774596669241483; 2 4 642.409 1.14017542509914;
     3 4 939.941 1.09544511501033; 3 9 566.555 0.894427190999916; 4 9 1050.204 1.04880884817015;
     1 4 1210.478 0.894427190999916; 1 5 901.755 0.894427190999916; 5 8 1206.806 1;
     4 8 1634.747 1.14017542509914; 4 5 498.107 1.26491106406735; 2 5 904.962 1.18321595661992;
     2 7 1630.454 1.04880884817015; 1 7 849.005 0.894427190999916; 1 9 601.906 1.09544511501033;
     8 9 666.874 1.14017542509914; 7 8 667.595 0.774596669241483; 5 7 823.99 1.26491106406735;
     5 6 722.631 1.14017542509914; 6 9 1193.036 0.836660026534076; 5 9 572.094 0.836660026534076;
     3 5 504.968 1.30384048104053; 3 7 591.506 1.26491106406735; 7 9 328.667 0.948683298050514`,
    0.01,
  ),
  control: ['1', '2', '3', '8'],
  places: {
    4: [3299.9644, 9100.8289],
    5: [3697.8223, 9400.5394],
    6: [3080.3184, 9775.8943],
    7: [4393.216, 9842.5618],
    9: [4251.0495, 9546.2298],
  },
  stdCm: {
    4: [0.752, 1.121],
    5: [0.67, 1.207],
    6: [0.924, 1.193],
    7: [0.817, 0.879],
    9: [0.728, 1.016],
  },
};

/** Wolf, Ausgleichungsrechnung II (1979), p. 87: a point in space from four distances. */
const wolf: Answered = {
  name: 'Wolf p. 87',
  unit: 0.01,
  at: {
    1: [1200, 900, 900],
    2: [900, 600, 900],
    3: [600, 900, 900],
    4: [900, 1200, 900],
    P: [900, 900, 1300],
  },
  lines: lines('1 P 499.99; 2 P 500; 3 P 500.01; 4 P 500.02', 0.01),
  control: ['1', '2', '3', '4'],
  places: { P: [900.0167, 899.9833, 1300.0062] },
  stdCm: { P: [1.179, 1.179, 0.625] },
};

/**
 * Blankenbach & Willert, Robuster räumlicher Bogenschnitt, Allg. Vermessungs-Nachr. (2009) 320: a point in space from eight
 * distances; the file calls the first and the seventh blunders.
 */
export const blankenbachWillert: Answered = {
  name: 'Blankenbach & Willert 2009',
  unit: 0.05,
  at: {
    51: [-8.62, 27.42, 10.29],
    37: [-4.95, 27.3, 10.04],
    31: [-4.85, 20.69, 10.51],
    102: [0.52, 22.59, 9.77],
    331: [-6.12, 25.48, 10.92],
    35: [0.45, 27.39, 10.75],
    103: [0.61, 17.19, 9.71],
    101: [-7.88, 22.45, 10.16],
    MS: [-2.59, 24.22, 9.62],
  },
  lines: lines(
    'MS 51 8.2; MS 37 3.85; MS 31 4.35; MS 102 3.51; MS 331 3.98; MS 35 4.37; MS 103 8.17; MS 101 5.73',
    0.05,
  ),
  control: ['51', '37', '31', '102', '331', '35', '103', '101'],
  places: { MS: [-2.3042, 24.3101, 9.5248] },
  stdCm: { MS: [29.914, 33.222, 119.427] },
};

/**
 * Höpke, Fehlerlehre und Ausgleichungsrechnung (1980), example 35.5, pp. 120–123, net Sattenhausen, left free. The book's
 * list says 1789.499 for 1059–75, its results stand on 1789.449: a misread of 5 cm that was published.
 */
export const hoepke: Answered = {
  name: 'Höpke 35.5',
  unit: 0.01,
  at: {
    20: [3579041.416, 5707194.412],
    75: [3575403.277, 5707682.612],
    86: [3575322.061, 5708700.952],
    87: [3576581.778, 5709938.106],
    1006: [3578284.289, 5708758.641],
    1011: [3577052.332, 5708103.204],
    1059: [3576852.894, 5706633.642],
    1087: [3576213.699, 5709199.889],
  },
  lines: lines(
    `86 1006 2962.832; 86 87 1765.657; 86 1087 1021.768; 86 75 1021.536; 86 1011 1830.646; 86 20 4012.921;
     86 1059 2572.516; 1087 87 824.863; 1087 20 3466.722; 1087 1059 2644.789; 1087 75 1720.13; 1087 1006 2117.134;
     1087 1011 1380.633; 1006 75 3075.373; 1006 20 1737.824; 1006 1059 2562.134; 1006 1011 1395.459;
     1006 87 2071.154; 1011 87 1894.263; 1011 75 1701.824; 1011 1059 1483.088; 1011 20 2186.853; 1059 20 2259.167;
     1059 75 1789.449; 1059 87 3315.63; 20 87 3684.782; 20 75 3670.735`,
    0.01,
  ),
  control: [],
  places: {
    20: [3579041.4042, 5707194.4039],
    75: [3575403.2853, 5707682.6565],
    86: [3575322.0203, 5708700.9554],
    87: [3576581.7857, 5709938.0995],
    1006: [3578284.292, 5708758.6275],
    1011: [3577052.3287, 5708103.207],
    1059: [3576852.9606, 5706633.5764],
    1087: [3576213.6691, 5709199.9319],
  },
  stdCm: {},
};

export const answered: readonly Answered[] = [
  ghilani,
  benning,
  strangBorre,
  weiss,
  wolf,
  blankenbachWillert,
  hoepke,
];
