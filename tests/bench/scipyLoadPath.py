"""Times the full load-path matrix in SciPy: SuperLU factor, a unit misfit in every member, energies in every member.

Usage: scipyLoadPath.py FILE REPEATS; FILE: int32 n, b, count, held count, then member-mode row, column (int32), held (int32),
value, stiffness (float64). Measuring only; never part of the product. Prints the fastest seconds and a check sum.
"""
import sys, time
import numpy as np
from scipy.sparse import coo_matrix, diags
from scipy.sparse.linalg import splu

raw = open(sys.argv[1], "rb").read()
n, b, count, nheld = (int(v) for v in np.frombuffer(raw, np.int32, 4))
rows = np.frombuffer(raw, np.int32, count, 16)
cols = np.frombuffer(raw, np.int32, count, 16 + 4 * count)
held = np.frombuffer(raw, np.int32, nheld, 16 + 8 * count)
at = 16 + 8 * count + 4 * nheld
at += -at % 8
vals = np.frombuffer(raw, np.float64, count, at)
stiff = np.frombuffer(raw, np.float64, 6 * b, at + 8 * count)
B = coo_matrix((vals, (rows, cols)), shape=(6 * b, n)).tocsr()
free = np.setdiff1d(np.arange(n), held)
B = B[:, free].tocsr()
K = (B.T @ diags(stiff) @ B).tocsc()
options = dict(permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options=dict(SymmetricMode=True))
best, total = float("inf"), 0.0
for _ in range(int(sys.argv[2])):
    start = time.perf_counter()
    factor = splu(K, **options)
    X = factor.solve(np.asarray(B[0::6].T.todense()))
    V = B @ X
    energy = (stiff[:, None] * V * V).reshape(b, 6, b).sum(axis=1)
    best = min(best, time.perf_counter() - start)
    total = float(energy.sum())
print(best, total)
