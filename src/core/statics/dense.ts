import {
  CholeskyDecomposition,
  EigenvalueDecomposition,
  Matrix,
  SingularValueDecomposition,
} from 'ml-matrix';

/** Singular values of a matrix given by rows, largest first. */
export const singularValues = (rows: number[][]): number[] =>
  new SingularValueDecomposition(new Matrix(rows), {
    computeLeftSingularVectors: false,
    computeRightSingularVectors: false,
    autoTranspose: true,
  }).diagonal;

/** Smallest singular value of a small square matrix given by rows. */
export const smallestSingularValue = (rows: number[][]): number => Math.min(...singularValues(rows));

/** Eigenvalues, smallest first, and their unit vectors, of a small symmetric matrix given by rows. */
export const symmetricEigen = (rows: number[][]): { values: number[]; vectors: number[][] } => {
  const evd = new EigenvalueDecomposition(new Matrix(rows), { assumeSymmetric: true });
  const columns = evd.eigenvectorMatrix.transpose().to2DArray();
  const order = evd.realEigenvalues
    .map((_, k) => k)
    .sort((a, b) => evd.realEigenvalues[a]! - evd.realEigenvalues[b]!);
  return { values: order.map((k) => evd.realEigenvalues[k]!), vectors: order.map((k) => columns[k]!) };
};

/** Solves a small symmetric positive definite system given by rows. */
export const solveSymmetric = (rows: number[][], right: readonly number[]): number[] =>
  new CholeskyDecomposition(new Matrix(rows)).solve(Matrix.columnVector([...right])).to1DArray();
