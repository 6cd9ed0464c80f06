import { EigenvalueDecomposition, Matrix, SingularValueDecomposition } from 'ml-matrix';

/** Smallest singular value of a small matrix given by rows. */
export const smallestSingularValue = (rows: number[][]): number =>
  Math.min(...new SingularValueDecomposition(new Matrix(rows)).diagonal);

/** Eigenvalues, smallest first, and their unit vectors, of a small symmetric matrix given by rows. */
export const symmetricEigen = (rows: number[][]): { values: number[]; vectors: number[][] } => {
  const evd = new EigenvalueDecomposition(new Matrix(rows), { assumeSymmetric: true });
  const columns = evd.eigenvectorMatrix.transpose().to2DArray();
  return { values: evd.realEigenvalues, vectors: columns };
};
