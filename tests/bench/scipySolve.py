"""Times SciPy's SuperLU (symmetric mode, minimum degree): order + factor + solve. Measuring only; never part of the product.

Usage: scipySolve.py FILE REPEATS; FILE: int32 n, int32 nnz, then indptr, indices (int32), data, right side (float64).
Prints the fastest seconds, the norm of the answer, the entries of L, the seconds of 100 more right-hand sides,
and the relative residual after one step of refinement.
"""
import sys, time
import numpy as np
from scipy.sparse import csc_matrix
from scipy.sparse.linalg import splu

raw = open(sys.argv[1], "rb").read()
n, nnz = np.frombuffer(raw, np.int32, 2)
indptr = np.frombuffer(raw, np.int32, n + 1, 8)
indices = np.frombuffer(raw, np.int32, nnz, 8 + 4 * (n + 1))
at = 8 + 4 * (n + 1) + 4 * nnz
at += -at % 8
data = np.frombuffer(raw, np.float64, nnz, at)
right = np.frombuffer(raw, np.float64, n, at + 8 * nnz)
k = csc_matrix((data.copy(), indices.copy(), indptr.copy()), shape=(int(n), int(n)))
k.sort_indices()
options = dict(permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options=dict(SymmetricMode=True))
best, answer = float("inf"), None
for _ in range(int(sys.argv[2])):
    start = time.perf_counter()
    factor = splu(k, **options)
    answer = factor.solve(right)
    best = min(best, time.perf_counter() - start)
many = np.tile(right[:, None], (1, 100))
start = time.perf_counter()
factor.solve(many)
hundred = time.perf_counter() - start
refined = answer + factor.solve(right - k @ answer)
residual = float(np.linalg.norm(right - k @ refined) / np.linalg.norm(right))
print(best, float(np.linalg.norm(answer)), factor.L.nnz, hundred, residual)
